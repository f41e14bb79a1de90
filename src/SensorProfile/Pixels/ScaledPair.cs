namespace SensorProfile.Pixels;

/// <summary>A pair of flats whose light was not the same: the second frame is scaled to the first, as a whole or row by row, before they are subtracted.</summary>
/// <remarks>Three passes: row means give the ratios ρ, a histogram of d²/(a + ρ²b) gives the clip, the last pass adds up what the clip keeps.
/// Sums are kept row by row and added in the order of the rows, so they do not depend on threads.</remarks>
internal static class ScaledPair
{
    /// <summary>Measures every channel of a flat pair.</summary>
    /// <param name="a">First frame.</param>
    /// <param name="b">Second frame, the same size.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="pedestal">Level without light at the same exposure, ADU.</param>
    /// <param name="kind">One ratio for each row, or one for the whole channel.</param>
    /// <param name="clip">Pixels whose d/√(a + ρ²b) lies beyond this many standard deviations are left out.</param>
    /// <param name="options">How the walks are run.</param>
    public static IReadOnlyList<ScaledPairChannel> Of(
        IFrameSamples a, IFrameSamples b, ColourMosaic mosaic, Pedestal pedestal, RatioKind kind, double clip = 5, WalkOptions? options = null)
    {
        pedestal.Check(a.Width, a.Height);
        var rows = LightRow.Measure(a, b, mosaic, pedestal, options);
        double[][] ratios = [.. rows.Select(channel => Ratios(channel, kind))];
        var counts = ScaledRow.Histograms(a, b, mosaic, pedestal, ratios, options);
        double[] limits = [.. counts.Select(histogram => histogram.Limit(clip))];
        var sums = ScaledRow.Measure(a, b, mosaic, pedestal, ratios, limits, options);
        return [.. Enumerable.Range(0, mosaic.Channels).Select(channel => Combine(mosaic, channel, a.Width, rows[channel], sums[channel], kind))];
    }

    private static double[] Ratios(LightRow[] rows, RatioKind kind)
    {
        double whole = rows.Sum(row => row.A) / rows.Sum(row => row.B);
        return [.. rows.Select(row => kind == RatioKind.RowByRow ? row.A / row.B : whole)];
    }

    private static ScaledPairChannel Combine(ColourMosaic mosaic, int channel, int width, LightRow[] rows, ScaledRow[] sums, RatioKind kind)
    {
        int rowLength = mosaic.ColumnsOf(channel, width);
        long all = (long)rows.Length * rowLength, kept = sums.Sum(row => row.Pixels);
        double sharing = kind == RatioKind.RowByRow ? rowLength : all;
        double squares = sums.Sum(row => row.Squares) / (1 - 1 / sharing);
        double light = sums.Sum(row => row.Light), weight = sums.Sum(row => row.ReadWeight);
        double second = sums.Sum(row => row.SecondMoment) / kept, fourth = sums.Sum(row => row.FourthMoment) / kept;
        double sumA = rows.Sum(row => row.A), sumB = rows.Sum(row => row.B);
        double[] rowRatios = [.. rows.Select(row => row.A / row.B)];
        return new ScaledPairChannel(mosaic.Names[channel], kept, all - kept, squares, light, weight, fourth / (second * second) - 3,
            sumA / all, sumB / all, rowRatios, ChiSquare(rows, sumA / sumB, rowLength, sums));
    }

    /// <summary>Variance of a row's mean difference from noise alone: the row's own Σd²/(m(m−1)), with the whole-frame offset of the row taken out of Σd².</summary>
    private static double ChiSquare(LightRow[] rows, double whole, int rowLength, ScaledRow[] sums)
    {
        double chi = 0;
        int used = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            double offset = (rows[i].A - whole * rows[i].B) / rowLength, own = sums[i].Differences / Math.Max(1, sums[i].Pixels);
            double variance = sums[i].Pixels < 2 ? 0 : (sums[i].Squares / sums[i].Pixels - own * own) / (sums[i].Pixels - 1);
            if (!(variance > 0))
                continue;
            chi += offset * offset / variance;
            used++;
        }
        return used > 1 ? chi / (used - 1) : double.NaN;
    }
}
