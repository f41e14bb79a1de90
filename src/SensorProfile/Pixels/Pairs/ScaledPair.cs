using SensorProfile.Pixels.Strips;

namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// A pair of flats of unequal brightness: the second frame is scaled to the first, as a whole or row by row, before
/// subtraction.
/// </summary>
/// <remarks>Row means give the ratios ρ, a histogram of d²/(a + ρ²b) gives the clip, and another pass sums the pixels
/// that the clip keeps. All this is repeated with the ratios of the kept pixels, because a single particle hit shifts
/// the ratio of its row. Sums are kept row by row and added in row order, so they do not depend on the number of
/// threads.</remarks>
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
    public static IReadOnlyList<ScaledPairChannel> Measure(
        IFrameSamples a,
        IFrameSamples b,
        ColourMosaic mosaic,
        ChannelPedestals pedestal,
        RatioKind kind,
        double clip = 5,
        WalkOptions? options = null
    )
    {
        var light = LightRow.Measure(a, b, mosaic, pedestal, options);
        var sums = Clip([.. light.Select(rows => Ratios(Array.ConvertAll(rows, row => (row.A, row.B)), kind))]);
        sums = Clip([.. sums.Select(rows => Ratios(Array.ConvertAll(rows, row => (row.A, row.B)), kind))]);
        return
        [
            .. Enumerable
                .Range(0, mosaic.Channels)
                .Select(channel => Combine(mosaic, channel, a.Width, light[channel], sums[channel], kind)),
        ];

        ScaledRow[][] Clip(double[][] ratios)
        {
            var squares = ScaledRow.Histograms(a, b, mosaic, pedestal, ratios, options);
            return ScaledRow.Measure(
                a,
                b,
                mosaic,
                pedestal,
                ratios,
                [.. squares.Select(histogram => histogram.Limit(clip))],
                options
            );
        }
    }

    private static double[] Ratios((double A, double B)[] rows, RatioKind kind)
    {
        double whole = rows.Sum(row => row.A) / rows.Sum(row => row.B);
        return [.. rows.Select(row => kind == RatioKind.RowByRow ? row.A / row.B : whole)];
    }

    private static ScaledPairChannel Combine(
        ColourMosaic mosaic,
        int channel,
        int width,
        LightRow[] light,
        ScaledRow[] rows,
        RatioKind kind
    )
    {
        int rowLength = mosaic.ColumnsOf(channel, width);
        long all = (long)rows.Length * rowLength,
            kept = rows.Sum(row => row.Pixels);
        double sharing = kind == RatioKind.RowByRow ? rowLength : all;
        double squares = rows.Sum(row => row.Squares) / (1 - 1 / sharing);
        double second = rows.Sum(row => row.SecondMoment) / kept,
            fourth = rows.Sum(row => row.FourthMoment) / kept;
        return new ScaledPairChannel(
            mosaic.Names[channel],
            kept,
            all - kept,
            squares,
            rows.Sum(row => row.Light),
            rows.Sum(row => row.ReadWeight),
            fourth / (second * second) - 3,
            light.Sum(row => row.A) / all,
            light.Sum(row => row.B) / all,
            [.. rows.Select(row => row.A / row.B)],
            ChiSquare(rows)
        );
    }

    /// <summary>
    /// χ² per degree of freedom: squared deviation of each row's mean from the ratio of the whole channel, over what
    /// noise alone causes (the row's own variance/m).
    /// </summary>
    private static double ChiSquare(ScaledRow[] rows)
    {
        double whole = rows.Sum(row => row.A) / rows.Sum(row => row.B),
            chi = 0;
        int used = 0;
        foreach (var row in rows)
        {
            double offset = (row.A - whole * row.B) / row.Pixels,
                own = row.Differences / row.Pixels;
            double variance = (row.Squares / row.Pixels - own * own) / (row.Pixels - 1);
            if (row.Pixels < 2 || !(variance > 0))
                continue;
            chi += offset * offset / variance;
            used++;
        }
        return used > 1 ? chi / (used - 1) : double.NaN;
    }
}
