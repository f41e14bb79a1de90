using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Shots;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>Lists to print and tick off: master darks, shots.</summary>
internal static class ListBlocks
{
    private const string Box = "[  ]"; // to tick by hand

    /// <summary>
    /// The masters of a plan; each number of frames is followed by its interval where that is wider than the
    /// number itself.
    /// </summary>
    public static TableBlock Masters(PlanAnswer answer)
    {
        bool when = answer.Masters.Any(master => master.When is not null);
        return new TableBlock(
            ["", "Frames (95 %)", "Exposure", "Sensor", "Setting", "Time", when ? "When and why" : "Why"],
            [
                .. answer.Masters.Select(master =>
                    (IReadOnlyList<string>)
                        [
                            Box,
                            QuantityText.Count(master.Frames) + Interval(master),
                            QuantityText.Number(master.Exposure) + " s",
                            QuantityText.Temperature(master.Temperature),
                            ModeLabel.Text(master.Settings),
                            DecisionText.Duration(master.Seconds),
                            when
                                ? $"{Sentence(PlanWords.When(master))} {PlanWords.Reason(answer, master)}"
                                : PlanWords.Reason(answer, master),
                        ]
                ),
            ],
            [0.05, 0.15, 0.1, 0.1, 0.15, 0.1, 0.35]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 3,
        };
    }

    /// <summary>The frames of a shot list.</summary>
    public static TableBlock Shots(ShotListAnswer answer) =>
        new(
            ["", "Kind", "Frames", "Exposure", "Sensor", "Level", "Time", "For"],
            [
                .. answer.Shots.Select(shot =>
                    (IReadOnlyList<string>)
                        [
                            Box,
                            EnumWord.Of(shot.Kind),
                            QuantityText.Count(shot.Frames),
                            shot.Exposure is { } seconds ? QuantityText.Number(seconds) + " s" : "",
                            shot.Temperature is { } celsius ? QuantityText.Temperature(celsius) : "",
                            shot.LevelPercent is { } level ? QuantityText.Number(level, 3) + " %" : "",
                            DecisionText.Duration(shot.Seconds),
                            ShotWords.Purpose(shot),
                        ]
                ),
            ],
            [0.05, 0.07, 0.1, 0.1, 0.1, 0.08, 0.1, 0.4]
        )
        {
            FirstNumberColumn = 2,
            LastNumberColumn = 6,
        };

    /// <summary>What more frames would bring.</summary>
    public static TableBlock Additions(ShotListAnswer answer) =>
        new(
            ["Frames", "Quantity", "Its uncertainty from", "to", "Time"],
            [
                .. answer.Additions.Select(addition =>
                    (IReadOnlyList<string>)
                        [
                            ShotWords.Frames(addition.What),
                            Words(addition.Quantity),
                            Doubt(addition.Before, addition.Unit),
                            Doubt(addition.After, addition.Unit),
                            DecisionText.Duration(addition.Seconds),
                        ]
                ),
            ],
            [0.34, 0.2, 0.17, 0.17, 0.12]
        )
        {
            FirstNumberColumn = 2,
        };

    /// <summary>The uncertainties to expect.</summary>
    public static TableBlock Expected(ShotListAnswer answer) =>
        new(
            ["Quantity", "Uncertainty now", "With these frames"],
            [
                .. answer.Expected.Select(expected =>
                    (IReadOnlyList<string>)
                        [
                            Words(expected.Quantity),
                            Doubt(expected.Now, expected.Unit),
                            Doubt(expected.WithShots, expected.Unit),
                        ]
                ),
            ],
            [0.4, 0.3, 0.3]
        )
        {
            FirstNumberColumn = 1,
        };

    private static string Doubt(double? uncertainty, string unit) =>
        uncertainty is { } value ? $"±{QuantityText.Number(value, 2)} {QuantityText.Unit(unit)}" : "not measurable";

    private static string Words(string name) =>
        name == QuantityNames.ReadNoise
            ? "read noise of one pixel"
            : string.Concat(name.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));

    private static string Interval(MasterPlan master) =>
        master.FramesInterval is { Low: { } low, High: { } high } && high > low
            ? $" ({QuantityText.Number(low)}–{QuantityText.Number(high)})"
            : "";

    private static string Sentence(string text) =>
        text.Length == 0 ? "" : char.ToUpperInvariant(text[0]) + text[1..] + ".";
}
