using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Whether a dark can be computed or scaled on this camera: the verdict and the trials behind it.</summary>
internal static class PredictionBlocks
{
    /// <summary>The blocks; none when nothing was tried.</summary>
    public static IEnumerable<Block> Compose(FixedPatternProfile pattern)
    {
        if (pattern.DarkPrediction is not { } trials)
            yield break;
        yield return new SubheadingBlock("Can a dark be computed?");
        yield return new TextBlock(
            $"{PredictionWords.Verdict(trials)} {Spaced(PredictionWords.Refused(trials))}"
                + $"{PredictionWords.Scaling(trials)} The table gives the spread of "
                + "computed minus real masters, in brackets the spread expected; set by set: table dark-prediction."
        );
        yield return new TableBlock(
            ["Method, tested on darks that were left out", "Works", "Ordinary, e⁻", "Hot, e⁻", "Glow, e⁻"],
            [
                .. Ways(trials)
                    .Where(w => w.Test is not null)
                    .Select(w =>
                        (IReadOnlyList<string>)
                            [
                                w.Name,
                                w.Test!.Passed ? "yes" : "no",
                                Cell(w.Test.Typical),
                                Cell(w.Test.Hot),
                                Cell(w.Test.Glow),
                            ]
                    ),
            ],
            [0.36, 0.1, 0.18, 0.18, 0.18]
        )
        {
            FirstNumberColumn = 2,
        };
        if ((trials.ByTemperature ?? trials.ByExposure) is { Classes.Count: > 0 } test)
            yield return TableBlock.Of(DarkPredictionDocument.Classes(test), 0.36, 0.1, 0.11, 0.13, 0.3);
    }

    private static string Spaced(string sentence) => sentence.Length == 0 ? "" : sentence + " ";

    private static (string Name, PredictionTest? Test)[] Ways(DarkPredictionProfile trials) =>
        [
            ("computed: another exposure", trials.ByExposure),
            ("computed: an intermediate temperature", trials.ByTemperature),
            ("computed: the coldest and the warmest", trials.Beyond),
            ("scaled by exposure", trials.ScalingByExposure),
            ("scaled by temperature, best ratio", trials.ScalingByTemperature),
            ("interpolated between two temperatures", trials.Interpolation),
        ];

    private static string Cell(PredictionFigures? figures) =>
        figures is null
            ? "–"
            : $"{QuantityText.Number(figures.Residual.Value, 2)} ({QuantityText.Number(figures.Expected, 2)})";
}
