using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Amplifier glow: where, how much, and how it grows beside the rest of the sensor.</summary>
internal static class GlowBlocks
{
    /// <summary>The blocks.</summary>
    public static IEnumerable<Block> Compose(
        ModeContext context,
        FixedPatternProfile pattern,
        IReadOnlyList<MapPicture> pictures
    )
    {
        yield return new SubheadingBlock("Amplifier glow");
        if (pattern.RateQuantiles.Count == 0)
        {
            yield return new TextBlock(
                "Glow was not looked for: it needs the dark rate of every pixel, from long darks of known temperature."
            );
        }
        else if (pattern.Glow.Count == 0)
        {
            yield return new TextBlock("No glow was found above the typical floor of the sensor.");
        }
        else
        {
            yield return new TableBlock(
                [
                    "Where",
                    "Column, row",
                    "Peak, e⁻/px/s",
                    "Share of the sensor",
                    "Power of exposure",
                    "Doubles every, °C",
                ],
                [
                    .. pattern.Glow.Select(glow =>
                        (IReadOnlyList<string>)
                            [
                                glow.Where,
                                $"{glow.X}, {glow.Y}",
                                TableCell.Of(glow.Peak),
                                $"{QuantityText.Number(100 * glow.AreaShare, 2)} % above {QuantityText.Number(glow.AreaThreshold, 2)}",
                                TableCell.Of(glow.ExposureExponent),
                                TableCell.Of(glow.DoublingTemperature),
                            ]
                    ),
                ],
                [0.17, 0.12, 0.17, 0.19, 0.18, 0.17]
            )
            {
                FirstNumberColumn = 1,
            };
            if (Growth(context.Mode, pattern.Glow[0]) is { } sentence)
                yield return new TextBlock(sentence);
        }
        MapPicture[] shown =
        [
            .. pictures.Where(p => p.Map is "glow" or "read-noise" && (p.Map != "glow" || pattern.Glow.Count > 0)),
        ];
        if (shown.Length > 0)
            yield return new FigureBlock(
                context.Figures.Next(),
                $"{Titles(shown)}. " + "Grey scale at the right; the first row of the file is at the top.",
                [.. shown.Select(p => PicturePlot.Draw(p, [], [], 2))]
            )
            {
                Columns = 2,
                KeepsShape = true,
            };
        Panel[] laws =
        [
            .. new[] { GlowPlot.AgainstExposure(pattern), GlowPlot.AgainstTemperature(context.Mode) }.OfType<Panel>(),
        ];
        if (laws.Length > 0)
            yield return context.Figure(
                laws,
                "How the strongest glow grows: its signal against exposure at each temperature (line: in "
                    + "proportion), and its rate against temperature beside that of the typical pixel. Bars: 95 "
                    + "%.",
                "glow-rates",
                2
            );
    }

    /// <summary>What the laws of growth mean in practice.</summary>
    private static string? Growth(ModeProfile mode, GlowRegion glow)
    {
        string? exposure =
            glow.ExposureExponent is not { } power ? null
            : Math.Abs(power.Value - 1) < Math.Max(0.03, 2 * power.StandardUncertainty)
                ? "grows in proportion to the exposure, so darks may be scaled for it"
            : $"grows as the exposure to the power {QuantityText.Of(power)}, so darks of another exposure do not "
                + "remove it";
        string? temperature =
            glow.DoublingTemperature is not { } doubling ? null
            : mode.DarkCurrent?.DoublingTemperature is not { } rest ? $"doubles every {QuantityText.Of(doubling)}"
            : Math.Abs(doubling.Value - rest.Value)
            < 2 * Math.Sqrt(Math.Pow(doubling.StandardUncertainty, 2) + Math.Pow(rest.StandardUncertainty, 2))
                + 0.05 * rest.Value
                ? $"doubles every {QuantityText.Of(doubling)}, as the dark current does"
            : $"doubles every {QuantityText.Of(doubling)} where the dark current needs {QuantityText.Of(rest)}: "
                + $"cooling helps {(doubling.Value > rest.Value ? "less" : "more")} against the glow";
        string[] parts = [.. new[] { exposure, temperature }.OfType<string>()];
        return parts.Length == 0 ? null : $"The glow at the {glow.Where} {string.Join("; it ", parts)}.";
    }

    private static string Titles(MapPicture[] shown) =>
        shown.Length == 1
            ? shown[0].Title
            : string.Join("; ", shown.Select((p, i) => $"{(i == 0 ? "Left" : "right")}: {LowerFirst(p.Title)}"));

    private static string LowerFirst(string title) => $"{title[..1].ToLowerInvariant()}{title[1..]}";
}
