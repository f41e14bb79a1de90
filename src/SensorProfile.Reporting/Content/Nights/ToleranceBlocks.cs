using SensorProfile.Decisions.Tolerance;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Nights;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>How far off the darks may be: the curves, the causes, the skies side by side.</summary>
internal static class ToleranceBlocks
{
    private const string NoLimit = "no limit";

    /// <summary>The figure of one stack, or of the same stack without and with dithering.</summary>
    public static FigureBlock? Figure(
        FigureCounter figures,
        string table,
        params (ToleranceAnswer Answer, string Words)[] stacks
    )
    {
        Panel[] panels = [.. stacks.SelectMany(stack => TolerancePlot.Draw(stack.Answer, stack.Words))];
        return panels.Length == 0
            ? null
            : new FigureBlock(figures.Next(), Caption(stacks[0].Answer), panels) { Columns = 2, Table = table };
    }

    /// <summary>One row for each stack.</summary>
    public static TableBlock Table(IEnumerable<(string Name, ToleranceAnswer Answer)> stacks) =>
        new(
            ["Stack", "Warmer by", "Colder by", "Exposure by", "What sets it"],
            [
                .. stacks.Select(stack =>
                    (IReadOnlyList<string>)
                        [
                            stack.Name,
                            DecisionText.Of(stack.Answer, QuantityNames.ToleranceWarmer, NoLimit),
                            DecisionText.Of(stack.Answer, QuantityNames.ToleranceColder, NoLimit),
                            DecisionText.Of(stack.Answer, QuantityNames.ToleranceExposure, NoLimit),
                            DecisionText.Cause(stack.Answer.BindingCause),
                        ]
                ),
            ],
            [0.34, 0.18, 0.18, 0.17, 0.13]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 3,
        };

    /// <summary>What each cause alone allows.</summary>
    public static TableBlock Causes(ToleranceAnswer answer) =>
        new(
            ["Cause", "Warmer by", "Colder by", "Exposure by", "Limit"],
            [
                .. answer.Causes.Select(cause =>
                    (IReadOnlyList<string>)
                        [
                            DecisionText.Cause(cause.Cause),
                            Cell(cause, cause.Warmer),
                            Cell(cause, cause.Colder),
                            Cell(cause, cause.Exposure),
                            ToleranceWords.Threshold(cause.Cause, answer.Limits),
                        ]
                ),
            ],
            [0.12, 0.17, 0.17, 0.16, 0.38]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 3,
        };

    private static string Cell(CauseTolerance cause, Measurement? value) =>
        !cause.Known ? "not known"
        : value is null ? NoLimit
        : QuantityText.Of(value);

    private static string Caption(ToleranceAnswer answer) =>
        "How much of each limit is used up by darks warmer or colder than the lights, for "
        + $"{answer.Stack.Lights} lights of {QuantityText.Number(answer.Stack.ExposureSeconds)} s at "
        + $"{QuantityText.Temperature(answer.Stack.TemperatureCelsius)} "
        + $"under {DecisionText.Under(answer.Sky)}. Above 1 a limit is broken; the first line to reach it sets "
        + "the answer, whose 95 % interval is shaded. The rule of thumb of 5 °C (common practice, no source) is "
        + "dashed.";
}
