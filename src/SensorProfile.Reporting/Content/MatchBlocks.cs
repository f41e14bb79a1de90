using SensorProfile.Decisions;
using SensorProfile.Reporting.Plots;

namespace SensorProfile.Reporting.Content;

/// <summary>Darks against lights on disk: the verdicts, every pair, the lights through the night beside the tolerance.</summary>
internal static class MatchBlocks
{
    /// <summary>One row for each light set with the darks judged best for it.</summary>
    public static TableBlock Verdicts(MatchAnswer answer) => new(["Lights", "Best darks", "Verdict", "Loss", "Why, and what to do"],
        [.. answer.Matches.Select(match => (IReadOnlyList<string>)[match.Lights, match.Darks ?? "none", Verdict(match), Loss(match), match.Reason])], [0.2, 0.2, 0.1, 0.12, 0.38])
    { FirstNumberColumn = 3, LastNumberColumn = 3 };

    /// <summary>Every light set against every dark set.</summary>
    public static TableBlock Pairs(MatchAnswer answer) => new(["Lights", "Darks", "Verdict", "Loss", "Darks warmer by"],
        [.. answer.Pairs.Select(pair => (IReadOnlyList<string>)
            [pair.Lights, pair.Darks ?? "none", Verdict(pair), Loss(pair), pair.TemperatureDifference is { } apart ? QuantityText.Temperature(apart) : "not known"])], [0.3, 0.3, 0.13, 0.14, 0.13])
    { FirstNumberColumn = 3 };

    /// <summary>The lights of every set through the night; null when no temperature is known.</summary>
    public static FigureBlock? Night(MatchAnswer answer)
    {
        Panel[] panels = [.. answer.Matches.Select(NightPlot.Of).OfType<Panel>()];
        return panels.Length == 0 ? null : new FigureBlock(1,
            "Sensor temperature of every light through the night. The darks stand as a dashed line; the shaded band holds the lights that they serve one by one. Hollow marks lie outside of it. Without a band the tolerance is not known.", panels);
    }

    private static string Verdict(LightMatch match) => match.Verdict.Replace('-', ' ') + (match.Scaled ? ", scaled" : "");

    private static string Loss(LightMatch match) => match.Loss is null ? "" : QuantityText.Of(match.Loss);
}
