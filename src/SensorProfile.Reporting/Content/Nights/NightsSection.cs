using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Plots.Nights;
using DecisionAnswer = SensorProfile.NoiseModel.Answers.Answer;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>
/// What the measurements mean at night, under the default sky: how cold, how close the darks, how many, how long to
/// expose.
/// </summary>
internal static class NightsSection
{
    /// <summary>The section.</summary>
    public static ReportSection Compose(ModeContext context, NightAnswers answers)
    {
        var blocks = new List<Block>
        {
            new TextBlock(
                $"For lights of {NightAnswers.ExposureSeconds} s, {NightAnswers.Lights} to a stack, under a "
                    + $"{NightAnswers.Sky.Name}, {DecisionText.Rate(NightAnswers.Sky)} "
                    + $"({string.Join("; ", NightAnswers.Sky.Assumptions)})"
                    + (answers.Temperature is { } taken ? $"; the darks are judged at {taken.Words}" : "")
                    + ". For your own exposure, stack and sky, ask sensorprofile setpoint, darks match, darks plan, "
                    + "flats plan and exposure: each writes a page like this."
            ),
        };
        if (answers.Setpoints.Count > 0)
            blocks.AddRange(Cold(context, answers));
        if (answers.Still.Count > 0)
            blocks.AddRange(Near(context, answers));
        if (answers.Counts.Count > 0)
            blocks.AddRange(Many(context, answers));
        if (answers.Flats.Count > 0)
            blocks.AddRange(Flats(context, answers));
        if (answers.Exposures.Count > 0)
            blocks.AddRange(Long(answers));
        if (answers.Refusals.Count > 0)
            blocks.Add(new FindingsBlock(answers.Refusals));
        string[] rules =
        [
            .. answers
                .Setpoints.Concat<DecisionAnswer>(answers.Still)
                .Concat(answers.Counts)
                .Concat(answers.Flats)
                .SelectMany(answer => answer.RulesOfThumb)
                .Distinct(),
        ];
        if (rules.Length > 0)
            blocks.AddRange([new SubheadingBlock("For comparison, without dithering"), new ListBlock(rules)]);
        return new ReportSection("What this means for your nights", context.Label, blocks);
    }

    private static IEnumerable<Block> Cold(ModeContext context, NightAnswers answers)
    {
        yield return new SubheadingBlock("How cold");
        yield return new TextBlock(
            "The warmest sensor at which dark current adds no more than "
                + $"{DecisionText.Percent(100 * answers.Setpoints[0].Loss)} to the noise of a light. With a cooler, set "
                + "it there; without one, warmer nights cost more, as the curve shows."
        );
        if (SetpointBlocks.Figure(answers.Setpoints, context.Figures, Table(context, "setpoint")) is { } figure)
            yield return figure;
        yield return SetpointBlocks.Table(answers.Setpoints);
    }

    private static IEnumerable<Block> Near(ModeContext context, NightAnswers answers)
    {
        yield return new SubheadingBlock("How far off the darks may be");
        if (
            answers.Dithered.Count > 0
            && ToleranceBlocks.Figure(
                context.Figures,
                Table(context, "dark-tolerance"),
                (answers.Still[0], "Not dithered"),
                (answers.Dithered[0], "Dithered")
            )
                is { } figure
        )
            yield return figure;
        if (answers.SmoothPixels is double scale)
            yield return new TextBlock(
                $"Residuals of glow and level are judged over {QuantityText.Number(scale)} px: "
                    + ToleranceWords.Threshold(BindingCause.Glow, answers.Still[0].Limits)
                    + "."
            );
        yield return ToleranceBlocks.Table(
            answers
                .Still.Select(answer => ($"{answer.Sky.Name}, not dithered", answer))
                .Concat(
                    answers.Dithered.Select(answer =>
                        ($"{answer.Sky.Name}, {NightAnswers.Positions} positions, outliers rejected", answer)
                    )
                )
        );
    }

    private static IEnumerable<Block> Many(ModeContext context, NightAnswers answers)
    {
        yield return new SubheadingBlock("How many darks");
        if (DarkCountPlot.Draw(answers.Counts, [.. answers.Counts.Select(count => count.Sky.Name)]) is { } panel)
        {
            yield return context.Figure(
                panel,
                $"What the noise of the master dark costs a stack of {NightAnswers.Lights} lights of "
                    + $"{NightAnswers.ExposureSeconds} s that is not dithered, against the number of darks in the "
                    + "master. "
                    + "The marks show the fewest darks that stay within the accepted loss; the rule of thumb of "
                    + "20 (common practice, no source) is dashed.",
                "darks-needed"
            );
        }
        yield return new TableBlock(
            [
                "Sky",
                "Darks, not dithered",
                $"Darks, {NightAnswers.Positions} positions",
                "Cost of 20 darks, not dithered",
            ],
            [
                .. answers.Counts.Select(
                    (count, i) =>
                        (IReadOnlyList<string>)
                            [
                                count.Sky.Name,
                                DecisionText.Of(count, QuantityNames.Darks, "–"),
                                i < answers.DitheredCounts.Count
                                    ? DecisionText.Of(answers.DitheredCounts[i], QuantityNames.Darks, "–")
                                    : "–",
                                count.Quantities.GetValueOrDefault(QuantityNames.LossAt20) is { } loss
                                    ? DecisionText.Percent(loss.Value)
                                    : "–",
                            ]
                ),
            ],
            [0.34, 0.22, 0.22, 0.22]
        )
        {
            FirstNumberColumn = 1,
        };
    }

    private static IEnumerable<Block> Flats(ModeContext context, NightAnswers answers)
    {
        yield return new SubheadingBlock("How many flats, at which level");
        FlatPlanAnswer[] stacks = [.. answers.Flats, .. answers.DitheredFlats];
        if (FlatBlocks.Figure(context.Figures, Table(context, "flats-needed"), stacks) is { } figure)
            yield return figure;
        yield return new TableBlock(
            ["Stack", "Flats", "Mean level", "Cost of 20 flats", "Cost of the flat-field residual"],
            [
                .. stacks.Select(answer =>
                    (IReadOnlyList<string>)
                        [
                            answer.Stack.DitherPositions > 1
                                ? $"{answer.Stack.DitherPositions} positions"
                                : "not dithered",
                            answer.Verdict == FlatPlanVerdict.Limited
                                ? "none is enough"
                                : DecisionText.Of(answer, QuantityNames.Flats, "–"),
                            FlatPlanWords.At(answer.Level),
                            Cost(answer, QuantityNames.LossAt20Flats),
                            Cost(answer, QuantityNames.LossByPattern),
                        ]
                ),
            ],
            [0.16, 0.18, 0.3, 0.16, 0.2]
        )
        {
            FirstNumberColumn = 3,
        };
        Finding[] warnings =
        [
            .. stacks.SelectMany(s => s.Findings).Where(f => f.Severity > Severity.Note).DistinctBy(f => f.Code),
        ];
        if (warnings.Length > 0)
            yield return new FindingsBlock(warnings);
    }

    private static string Cost(FlatPlanAnswer answer, string quantity) =>
        answer.Quantities.GetValueOrDefault(quantity) is { } loss ? DecisionText.Percent(loss.Value) : "not measured";

    private static IEnumerable<Block> Long(NightAnswers answers)
    {
        yield return new SubheadingBlock("How long to expose");
        yield return ExposureBlocks.Skies(answers.Exposures);
        yield return new TextBlock(
            "Read noise then adds no more than 5 % to the noise of a light; longer exposures gain little and "
                + "lose stars to saturation, long before sky and dark current fill the well."
        );
    }

    private static string Table(ModeContext context, string name) => $"tables/{context.TableFolder}{name}.csv";
}
