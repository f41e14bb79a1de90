using SensorProfile.Pixels;
using SensorProfile.Profiles;

namespace SensorProfile.FixedPattern;

/// <summary>Structure of the response to light (PRNU), split into rows, columns and pixels as the standard does it for the level without light.</summary>
internal static class ResponseStructure
{
    private const double Clip = 0.5;                     // of the response: dead pixels and dust must not make a row or column

    /// <summary>Split in % of the signal, and periods.</summary>
    /// <remarks>EMVA 1288, Release 4.0 Linear: PRNU = √(s²₅₀ − s²_dark)/(μ₅₀ − μ_dark), and the same of each part. The level without light is taken off pixel by pixel, which removes its
    /// pattern; of the light's own unevenness a surface of fourth degree was taken off, which the standard, with its even light, does not need.</remarks>
    /// <param name="response">1 for a typical pixel.</param> <param name="width">px.</param> <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="temporalVariances">Relative temporal variance still in a value of each channel.</param>
    public static PatternStructure Of(float[] response, int width, ColourMosaic mosaic, IReadOnlyList<double> temporalVariances)
    {
        int height = response.Length / width;
        SpatialSplit[] channels = [.. Enumerable.Range(0, mosaic.Channels).Select(c =>
        {
            int period = mosaic.Period, top = c / period, left = c % period;
            return SpatialSplit.Of(mosaic.RowsOf(c, height), mosaic.ColumnsOf(c, width),
                (row, column) => 100 * Math.Clamp(response[(top + row * period) * width + left + column * period], 1 - Clip, 1 + Clip), 1e4 * temporalVariances[c]);
        })];
        double pixel = channels.Average(s => s.Pixel), pixels = channels.Sum(s => (double)s.Rows * s.Columns);
        Measurement Part(Func<SpatialSplit, double> part, double lines, string what) => Deviation(channels.Average(part), lines < pixels ? pixel * lines / pixels : 0, lines, what);
        var lines = LineTable.Of(response, width, mosaic, relative: true);
        return new PatternStructure
        {
            Total = Part(s => s.Total, pixels, "spatial standard deviation of the response at half saturation (EMVA 1288)"),
            Row = Part(s => s.Row, channels.Sum(s => (double)s.Rows), "rows' share of the spatial variance (EMVA 1288)"),
            Column = Part(s => s.Column, channels.Sum(s => (double)s.Columns), "columns' share of the spatial variance (EMVA 1288)"),
            Pixel = Part(s => s.Pixel, pixels, "pixels' share of the spatial variance (EMVA 1288)"),
            Periods = [.. LineSpectrum.Periods(Percent(lines.Means(false, 1, 0)), "across"), .. LineSpectrum.Periods(Percent(lines.Means(true, 1, 0)), "down")],
        };
    }

    private static double[] Percent(double[] means) => Array.ConvertAll(means, m => 100 * m);

    /// <summary>√ of a variance from n averages, each with the noise of its own pixels: u² = 2/n·(variance + noise)².</summary>
    private static Measurement Deviation(double variance, double noise, double n, string method)
    {
        double doubt = Math.Sqrt(2 / n) * (Math.Max(0, variance) + Math.Max(0, noise)), value = Math.Sqrt(Math.Max(0, variance));
        return new(value, variance > doubt ? doubt / (2 * value) : Math.Sqrt(doubt), "%", (long)n, method);
    }
}
