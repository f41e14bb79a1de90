using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Black level and temperature over the session.</summary>
internal static class BlackLevelSection
{
    /// <summary>The section; null when neither was measured.</summary>
    public static ReportSection? Compose(ModeContext context)
    {
        FixedPatternProfile? pattern = context.Mode.FixedPattern;
        var blocks = new List<Block>();
        if (pattern?.BlackLevel is { } level)
            blocks.AddRange(Level(context, level));
        if (pattern?.MaskedBorder is { } border)
            blocks.AddRange(MaskedBorderBlocks.Compose(border, context.Mode));
        if (pattern is not null && ThermometerPlot.Draw(pattern.Thermometer) is { Length: > 0 } panels)
        {
            blocks.Add(new SubheadingBlock("Temperature by the hot pixels"));
            blocks.Add(new TextBlock(Temperature(pattern.Thermometer)));
            blocks.Add(
                context.Figure(
                    panels,
                    "All hot pixels brighten together when the sensor warms, whatever its probe says. Left: "
                        + "temperature of each set of darks by its hot pixels minus the probe's reading, against the longest "
                        + "exposure at that temperature. Right: change from the first to the last frame of a set, by the "
                        + "hot pixels and by the probe. Bars: 95 %.",
                    "hot-pixel-thermometer",
                    2
                )
            );
        }
        return blocks.Count == 0
            ? null
            : new ReportSection("Black level and temperature over the session", context.Label, blocks);
    }

    private static IEnumerable<Block> Level(ModeContext context, BlackLevelProfile level)
    {
        yield return new TextBlock(Sentence(level));
        if (BlackLevelPlot.Draw(level) is { } panel)
            yield return context.Figure(
                panel,
                "Top: sensor temperature as read. Bottom: level of every bias and dark frame, with its dark signal "
                    + "subtracted; the line is the fitted drift with time and temperature and the step of the first frames after a "
                    + "pause. A steady black level is a flat row of points.",
                "black-level"
            );
        (string Name, Measurement? Value)[] rows =
        [
            ("Jitter from frame to frame", level.Jitter),
            ("Scatter from set to set", level.SetScatter),
            ("Drift with time", level.DriftPerHour),
            ("Change with temperature", level.DriftPerDegree),
            ("Change with exposure, without dark signal", level.DriftPerSecond),
            ("First frame after a pause", level.FirstFrameDifference),
            ("Smallest dark current that can be detected", level.SmallestDarkCurrent),
        ];
        yield return new TableBlock(
            ["Black level", "Value", "Unit"],
            [
                .. rows.Select(r =>
                    (IReadOnlyList<string>)
                        [
                            r.Name,
                            r.Value is { } v ? Number(v) : "cannot tell",
                            r.Value is { } u ? QuantityText.Unit(u.Unit) : "",
                        ]
                ),
            ],
            [0.46, 0.3, 0.24]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 1,
        };
        if (level.CannotTell.Count > 0)
            yield return new ListBlock(level.CannotTell);
    }

    private static string Number(Measurement value) =>
        value is { Value: 0, StandardUncertainty: 0 }
            ? "none found"
            : QuantityText.Number(value.Value, value.StandardUncertainty);

    private static string Sentence(BlackLevelProfile level)
    {
        string jitter = level.Jitter is { } j
            ? $"From frame to frame the black level moves by {QuantityText.Of(j)}. "
            : "";
        string limit =
            level.SmallestDarkCurrent is { } s
            && level.Limits.Where(l => l.Smallest == s).Select(l => l.LongestExposure).FirstOrDefault()
                is > 0
                    and var seconds
                ? $"With exposures up to {QuantityText.Number(seconds)} s a dark current below "
                    + $"{QuantityText.Number(s.Value, 2)} e⁻/px/s would be lost in these movements."
                : "Cannot tell from these frames how small a dark current would still show.";
        return jitter + limit;
    }

    private static string Temperature(IReadOnlyList<HotPixelTemperature> sets)
    {
        HotPixelTemperature[] off =
        [
            .. sets.Where(t =>
                t.Difference is { } d && Math.Abs(d.Value) > 0.25 && Math.Abs(d.Value) > 5 * d.StandardUncertainty
            ),
        ];
        if (off.Length == 0)
            return $"The temperature readings agree with the hot pixels in all {sets.Count} sets of darks.";
        HotPixelTemperature worst = off.MaxBy(t => Math.Abs(t.Difference!.Value))!;
        return $"In {off.Length} of {sets.Count} sets of darks the reading disagrees with the hot pixels; most in the "
            + $"{QuantityText.Number(worst.Exposure)} s darks at {QuantityText.Number(worst.Reading, 3)} °C, by "
            + $"{QuantityText.Of(worst.Difference)}.";
    }
}
