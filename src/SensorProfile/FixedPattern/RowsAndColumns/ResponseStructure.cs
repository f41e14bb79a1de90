using SensorProfile.Pixels;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>
/// Structure of the response to light (PRNU), split into rows, columns and pixels as the standard does for the level
/// without light.
/// </summary>
internal static class ResponseStructure
{
    // of the response: dead pixels and dust must not look like a row or column
    private const double Clip = 0.5;

    /// <summary>Measures the split, in % of the signal, and the periods.</summary>
    /// <remarks>EMVA 1288, Release 4.0 Linear: PRNU = √(s²₅₀ − s²_dark)/(μ₅₀ − μ_dark), and likewise for each part. The
    /// level without light is subtracted pixel by pixel, which removes its pattern; the unevenness of the light was
    /// removed with a surface of fourth degree, which the standard, with its even light, does not need.</remarks>
    /// <param name="response">Response of every pixel, 1 for a typical one.</param>
    /// <param name="width">px.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="temporalVariances">Relative temporal variance left in the values, for each channel.</param>
    public static PatternStructure Measure(
        float[] response,
        int width,
        ColourMosaic mosaic,
        IReadOnlyList<double> temporalVariances
    )
    {
        int height = response.Length / width;
        SpatialSplit[] channels =
        [
            .. Enumerable
                .Range(0, mosaic.Channels)
                .Select(c =>
                {
                    int period = mosaic.Period,
                        top = c / period,
                        left = c % period;
                    return SpatialSplit.Split(
                        mosaic.RowsOf(c, height),
                        mosaic.ColumnsOf(c, width),
                        (row, column) =>
                            100
                            * Math.Clamp(
                                response[(top + row * period) * width + left + column * period],
                                1 - Clip,
                                1 + Clip
                            ),
                        1e4 * temporalVariances[c]
                    );
                }),
        ];
        var lines = LineTable.Sum(response, width, mosaic, relative: true);
        return StructureParts.Combine(
            channels,
            [.. channels.Select(_ => 1.0)],
            "%",
            "spatial standard deviation of the response at half saturation (EMVA 1288)"
        ) with
        {
            Periods =
            [
                .. LineSpectrum.Periods(Percent(lines.Means(false, 1, 0)), PatternDirection.Across),
                .. LineSpectrum.Periods(Percent(lines.Means(true, 1, 0)), PatternDirection.Down),
            ],
        };
    }

    private static double[] Percent(double[] means) => Array.ConvertAll(means, m => 100 * m);
}
