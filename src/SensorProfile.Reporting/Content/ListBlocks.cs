using SensorProfile.Decisions;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Content;

/// <summary>Lists to print and tick off: master darks, shots.</summary>
internal static class ListBlocks
{
    private const string Box = "[  ]";      // to tick by hand

    /// <summary>The masters of a plan.</summary>
    public static TableBlock Masters(PlanAnswer answer)
    {
        bool when = answer.Masters.Any(master => master.When.Length > 0);
        return new TableBlock(["", "Frames", "Exposure", "Sensor", "Setting", "Time", when ? "When and why" : "Why"],
            [.. answer.Masters.Select(master => (IReadOnlyList<string>)
            [
                Box, QuantityText.Count(master.Frames), QuantityText.Number(master.Exposure) + " s", QuantityText.Temperature(master.Temperature), ModeLabel.Text(master.Settings),
                DecisionText.Duration(master.Seconds), when ? $"{Sentence(master.When)} {master.Reason}" : master.Reason,
            ])], [0.05, 0.1, 0.1, 0.1, 0.18, 0.11, 0.36]) { FirstNumberColumn = 1, LastNumberColumn = 3 };
    }

    /// <summary>The frames of a shot list.</summary>
    public static TableBlock Shots(ShotListAnswer answer) => new(["", "Kind", "Frames", "Exposure", "Sensor", "Level", "Time", "For"],
        [.. answer.Shots.Select(shot => (IReadOnlyList<string>)
        [
            Box, shot.Kind, QuantityText.Count(shot.Frames), shot.Exposure is { } seconds ? QuantityText.Number(seconds) + " s" : "", shot.Temperature is { } celsius ? QuantityText.Temperature(celsius) : "",
            shot.LevelPercent is { } level ? QuantityText.Number(level, 3) + " %" : "", DecisionText.Duration(shot.Seconds), shot.Reason,
        ])], [0.05, 0.07, 0.1, 0.1, 0.1, 0.08, 0.1, 0.4]) { FirstNumberColumn = 2, LastNumberColumn = 6 };

    /// <summary>What more frames would bring.</summary>
    public static TableBlock Additions(ShotListAnswer answer) => new(["Frames", "Quantity", "Its uncertainty shrinks by", "Time"],
        [.. answer.Additions.Select(addition => (IReadOnlyList<string>)
            [addition.What, Words(addition.Quantity), addition.Reduction >= 1 ? "becomes measurable" : DecisionText.Percent(100 * addition.Reduction), DecisionText.Duration(addition.Seconds)])],
        [0.4, 0.22, 0.23, 0.15]) { FirstNumberColumn = 2 };

    private static string Words(string name) => string.Concat(name.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));

    private static string Sentence(string text) => text.Length == 0 ? "" : char.ToUpperInvariant(text[0]) + text[1..] + ".";
}
