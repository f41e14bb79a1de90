using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Nights;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>
/// Darks against lights on disk: the verdicts, every pair, the lights through the night beside the tolerance.
/// </summary>
internal static class MatchBlocks
{
    private const int MaxPairs = 40,
        BestOfMany = 3;
    private const double WorthDrawing = 0.5; // °C

    /// <summary>One row for each light set with the darks judged best for it.</summary>
    public static TableBlock Verdicts(MatchAnswer answer) =>
        new(
            ["Lights", "Best darks", "Verdict", "Loss, %", "Why, and what to do"],
            [
                .. answer.Matches.Select(match =>
                    (IReadOnlyList<string>)
                        [
                            MatchWords.Set(match.Lights),
                            MatchWords.Darks(match),
                            Verdict(match),
                            Loss(match),
                            MatchWords.Reason(match),
                        ]
                ),
            ],
            [0.19, 0.19, 0.1, 0.15, 0.37]
        )
        {
            FirstNumberColumn = 3,
            LastNumberColumn = 3,
        };

    /// <summary>
    /// Every light set against every dark set; of very many, only the best of each light set, since the CSV table beside
    /// the page holds all.
    /// </summary>
    public static TableBlock Pairs(MatchAnswer answer) =>
        new(
            ["Lights", "Darks", "Verdict", "Loss, %", "Darks warmer by"],
            [
                .. Shown(answer)
                    .Select(pair =>
                        (IReadOnlyList<string>)
                            [
                                MatchWords.Set(pair.Lights),
                                MatchWords.Darks(pair),
                                Verdict(pair),
                                Loss(pair),
                                pair.TemperatureDifference is { } apart ? QuantityText.Temperature(apart) : "not known",
                            ]
                    ),
            ],
            [0.29, 0.29, 0.12, 0.16, 0.14]
        )
        {
            FirstNumberColumn = 3,
        };

    /// <summary>What the table of pairs shows.</summary>
    public static string PairsTitle(MatchAnswer answer) =>
        answer.Pairs.Count <= MaxPairs
            ? "Every light set against every dark set"
            : $"The {BestOfMany} best dark sets of every light set (all {QuantityText.Count(answer.Pairs.Count)} "
                + "pairs are in dark-match.csv)";

    /// <summary>
    /// The lights of every set through the night, where the tolerance is known or the temperature moved; null when
    /// there is none.
    /// </summary>
    public static FigureBlock? Night(MatchAnswer answer)
    {
        Panel[] panels =
        [
            .. answer
                .Matches.Where(match => match.Night is { Known: true } || match.Drift > WorthDrawing)
                .Select(NightPlot.Draw)
                .OfType<Panel>(),
        ];
        return panels.Length == 0
            ? null
            : new FigureBlock(
                1,
                "Sensor temperature of every light through the night. The dashed line marks the darks; the "
                    + "shaded band holds the lights that they serve one by one. Hollow marks lie outside it. Without "
                    + "a band, the tolerance is not known.",
                panels
            );
    }

    private static IEnumerable<LightMatch> Shown(MatchAnswer answer) =>
        answer.Pairs.Count <= MaxPairs
            ? answer.Pairs
            : answer
                .Pairs.GroupBy(pair => MatchWords.Set(pair.Lights))
                .SelectMany(lights =>
                    lights
                        .OrderBy(pair => pair.Verdict)
                        .ThenBy(pair => pair.Loss?.Value ?? double.PositiveInfinity)
                        .Take(BestOfMany)
                );

    private static string Verdict(LightMatch match) =>
        EnumWord.Spaced(match.Verdict) + (match.Scaled ? ", scaled" : "");

    private static string Loss(LightMatch match) =>
        match.Loss is { } loss ? QuantityText.Number(loss.Value, loss.StandardUncertainty) : "";
}
