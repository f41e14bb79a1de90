using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;
using static System.FormattableString;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Dark signal against exposure, and dark current against temperature.</summary>
internal static class DarkSection
{
    /// <summary>Dark signal against exposure.</summary>
    public static ReportSection Signal(ModeContext context)
    {
        const string Title = "Dark signal against exposure";
        DarkCurrentProfile? dark = context.Mode.DarkCurrent;
        IReadOnlyList<Panel> levels = DarkSignalPlot.Levels(dark, context.Mode.Gain);
        if (levels.Count == 0 && context.Mode.DarkNights.Count > 0)
            return new ReportSection(
                Title,
                context.Label,
                [
                    new TextBlock(
                        "The temperature of the darks is unknown: their signal is not drawn, but its rate stands in the next section."
                    ),
                ]
            );
        if (levels.Count == 0)
            return new ReportSection(
                Title,
                context.Label,
                [
                    .. context.Absent(
                        "Dark signal was not measured against exposure: it needs darks at three or more exposures at one "
                            + "temperature.",
                        FindingsBehind.DarkSignal
                    ),
                ]
            );
        var blocks = new List<Block>
        {
            context.Figure(
                levels,
                "Dark signal at each temperature; the slope of the line, times the gain, is the dark current. "
                    + "Each plot has its own scale. "
                    + "Filled, solid: the median pixel, corrected for what noise adds to the median of a frame. Hollow, "
                    + "dashed: the mean of all pixels. The mean lies above the median because hot pixels pull it "
                    + "up. Bars: 95 %.",
                "dark-signal",
                levels.Count == 1 ? 1 : 2
            ),
        };
        IReadOnlyList<Panel> variances = DarkSignalPlot.Variances(dark, context.Mode.Gain);
        if (dark!.Form == DarkForm.Variance && variances.Count > 0)
        {
            blocks.Add(
                context.Figure(
                    variances,
                    "The camera pins its black level, so that the level cannot show the dark current. Its noise can: "
                        + "the temporal variance grows with it. Bars: 95 %.",
                    "dark-signal",
                    variances.Count == 1 ? 1 : 2
                )
            );
        }
        return new ReportSection(Title, context.Label, blocks);
    }

    /// <summary>Dark current against temperature.</summary>
    public static ReportSection Current(ModeContext context)
    {
        const string Title = "Dark current against temperature";
        DarkCurrentProfile? dark = context.Mode.DarkCurrent;
        var blocks = new List<Block>();
        if (DarkCurrentPlot.Draw(dark) is { } panel)
            blocks.Add(context.Figure(panel, Caption(dark!), "dark-current"));
        else if (context.Mode.DarkNights.Count > 0)
            blocks.AddRange([
                new TextBlock(WithoutTemperature(context.Mode.DarkNights)),
                Nights(context.Mode.DarkNights, context.Mode.Gain is null ? "ADU/px/s" : "e⁻/px/s"),
            ]);
        else
            blocks.AddRange(
                context.Absent(
                    "Dark current was not measured: it needs darks at three or more exposures, and at three or more "
                        + "temperatures to tell how it doubles.",
                    FindingsBehind.DarkSignal
                )
            );
        if (dark?.Points.Count > 0)
            blocks.Add(Points(dark.Points));
        if (dark?.Models.Count > 0)
            blocks.AddRange([
                new SubheadingBlock("The laws compared"),
                new TextBlock(
                    "By the corrected Akaike criterion, relative to the best law. The doubling law is kept unless "
                        + "another is lower by more than 6."
                ),
                Models(dark),
            ]);
        return new ReportSection(Title, context.Label, blocks);
    }

    private static string Caption(DarkCurrentProfile dark)
    {
        string what = dark.Form == DarkForm.Variance ? "the rate from the variance" : "the median pixel";
        string law = dark.Selected is { } name
            ? $"The law “{ModelNames.Text(name)}” was chosen for {what}; its 95 % band includes the "
                + "spread between the plausible laws; it is dashed where nothing was measured: do not rely on it "
                + "there. Below: residuals from the law. "
            : "Too few temperatures for a law: the points stand alone. ";
        return $"Dark current against temperature, on a logarithmic scale. {law}Bars: 95 %. Temperatures are as "
            + "read by a probe or thermometer, which may differ from the pixels by degrees.";
    }

    private static string WithoutTemperature(IReadOnlyList<DarkNight> nights) =>
        "The temperature of the darks is unknown, so there is no law. "
        + (
            nights.Any(n => n.AboveColdest is not null)
                ? "The darks of a night were sorted by the light of their hot pixels, taken to double every 6 °C ± 1 °C: a "
                    + "thermometer's reading typed in for one dark of the coldest and one of the warmest group would turn this "
                    + "table into a law."
                : "A thermometer's reading typed in for some darks, at three temperatures or more, would give one."
        );

    private static TableBlock Nights(IReadOnlyList<DarkNight> nights, string unit) =>
        new(
            [
                "From (UTC)",
                "Warmer than the coldest, °C",
                $"Median pixel, {unit}",
                $"From the variance, {unit}",
                "Exposures, s",
                "Frames",
            ],
            [
                .. nights.Select(night =>
                    (IReadOnlyList<string>)
                        [
                            night.StartUtc is { } start ? Invariant($"{start:yyyy-MM-dd HH:mm}") : "unknown",
                            night.AboveColdest is { Value: > 0 } above ? TableCell.Of(above)
                            : night.AboveColdest is null ? "–"
                            : "0",
                            TableCell.Of(night.TypicalRate),
                            TableCell.Of(night.RateFromVariance),
                            Exposures(night.Exposures),
                            QuantityText.Count(night.Frames),
                        ]
                ),
            ],
            [0.18, 0.2, 0.19, 0.21, 0.13, 0.09]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 5,
        };

    private static TableBlock Points(IReadOnlyList<DarkCurrentPoint> points) =>
        new(
            [
                "°C",
                "Median pixel, e⁻/px/s",
                "All pixels, e⁻/px/s",
                "From the variance, e⁻/px/s",
                "Exposures, s",
                "Frames",
                "Linear",
            ],
            [
                .. points.Select(point =>
                    (IReadOnlyList<string>)
                        [
                            Celsius(point.Temperature),
                            Typical(point),
                            TableCell.Of(point.MeanRate),
                            TableCell.Of(point.RateFromVariance),
                            Exposures(point.Exposures),
                            QuantityText.Count(point.Frames),
                            point.Linear ? "yes" : "no",
                        ]
                ),
            ],
            [0.07, 0.19, 0.19, 0.23, 0.13, 0.1, 0.09]
        )
        {
            FirstNumberColumn = 0,
            LastNumberColumn = 5,
        };

    private static string Celsius(double temperature) =>
        QuantityText.Temperature(temperature).Replace(" °C", "", StringComparison.Ordinal);

    private static string Typical(DarkCurrentPoint point) =>
        point.TypicalRate is null && point.UpperLimit is { } limit
            ? $"below {QuantityText.Number(limit, 2)}"
            : TableCell.Of(point.TypicalRate);

    private static string Exposures(IReadOnlyList<double> exposures) =>
        exposures.Count switch
        {
            0 => "–",
            1 => QuantityText.Number(exposures[0]),
            _ => $"{exposures.Count}, to {QuantityText.Number(exposures[^1])}",
        };

    private static TableBlock Models(DarkCurrentProfile dark)
    {
        double best = dark.Models.Min(model => model.InformationCriterion ?? double.PositiveInfinity);
        return new TableBlock(
            ["Law", "Doubling, °C", "Rate, e⁻/px/s", "Criterion", "Weight", "χ² / d.o.f."],
            [
                .. dark.Models.Select(model =>
                    (IReadOnlyList<string>)
                        [
                            ModelNames.Text(model.Name) + (model.Name == dark.Selected ? " (chosen)" : ""),
                            TableCell.Of(model.DoublingTemperature),
                            TableCell.Of(model.RateAtReference),
                            model.InformationCriterion is { } criterion
                                ? QuantityText.Number(criterion - best, 2)
                                : "–",
                            model.Weight is { } weight ? QuantityText.Number(Math.Round(weight, 3), 3) : "–",
                            $"{QuantityText.Number(model.ChiSquared, 3)} / {model.DegreesOfFreedom}",
                        ]
                ),
            ],
            [0.28, 0.17, 0.23, 0.1, 0.1, 0.12]
        )
        {
            FirstNumberColumn = 1,
        };
    }
}
