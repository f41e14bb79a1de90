using System.Globalization;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>How read noise is spread over the pixels.</summary>
internal static class NoiseSection
{
    /// <summary>The section.</summary>
    public static ReportSection Compose(ModeContext context)
    {
        NoiseDistribution? noise = context.Mode.NoiseDistribution;
        if (NoiseDistributionPlot.Draw(noise) is not { } panel)
        {
            return new ReportSection(
                "Read noise of individual pixels",
                context.Label,
                [
                    .. context.Absent(
                        "The noise of individual pixels was not measured: it needs eight or more bias frames. "
                            + Whole(context.Mode),
                        FindingsBehind.PixelNoise
                    ),
                ]
            );
        }
        string unit = QuantityText.Unit(noise!.Unit);
        string caption =
            $"Temporal noise of every pixel over {noise.Frames} bias frames. Half of the pixels lie below "
            + $"{QuantityText.Number(noise.Median, 3)} {unit}, "
            + $"one in a thousand above {QuantityText.Number(noise.Percentile999, 3)} {unit}: the tail consists "
            + "of pixels that flicker between levels. "
            + "The scale of counts is logarithmic, so that the tail can be seen.";
        return new ReportSection(
            "Read noise of individual pixels",
            context.Label,
            [context.Figure(panel, caption, "noise-distribution"), Table(noise, unit)]
        );
    }

    private static string Whole(ModeProfile mode) =>
        (mode.ReadNoise ?? mode.ReadNoiseAdu) is { } noise
            ? $"For the camera as a whole it is {QuantityText.Of(noise)}."
            : "";

    private static TableBlock Table(NoiseDistribution noise, string unit)
    {
        string[] values =
        [
            .. new[]
            {
                noise.Median,
                noise.Mean,
                noise.Rms,
                noise.Percentile90,
                noise.Percentile99,
                noise.Percentile999,
            }.Select(value => value.ToString("F2", CultureInfo.InvariantCulture)),
        ];
        return new TableBlock(
            [$"Noise, {unit}", "median", "mean", "rms", "90 %", "99 %", "99.9 %"],
            [
                ["of the pixels", .. values],
            ],
            [0.22, 0.13, 0.13, 0.13, 0.13, 0.13, 0.13]
        )
        {
            FirstNumberColumn = 1,
        };
    }
}
