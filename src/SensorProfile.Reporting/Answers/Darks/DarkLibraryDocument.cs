using SensorProfile.Drift.MasterDarks;
using SensorProfile.Drift.Patches;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks check</c>.</summary>
internal static class DarkLibraryDocument
{
    public static AnswerShape Shape { get; } = AnswerShape.Of<CheckVerdict>("darks check", typeof(DarkLibraryFields));

    /// <summary>The answer that terminal, JSON and report all show.</summary>
    public static AnswerDocument Compose(DarkLibraryAnswer answer)
    {
        AnswerWords words = DarkLibraryWords.Phrase(answer);
        return DecisionDocument.Compose(
            "darks check",
            answer,
            words,
            new DarkLibraryFields(
                [.. answer.Masters.Select(master => Member(answer, master))],
                [.. answer.Shoot.Select(darks => Member(answer, darks))]
            )
        ) with
        {
            Findings = [.. answer.Findings, .. DarkLibraryWords.Findings(answer)],
            RulesOfThumb = DarkLibraryWords.RulesOfThumb,
            Tables =
            [
                new AnswerTable(
                    "",
                    ["master", "verdict", ">adds per light", ">loss", "reason"],
                    [
                        .. answer.Masters.Select(m =>
                            (IReadOnlyList<string>)
                                [
                                    Path.GetFileName(m.File),
                                    EnumWord.Spaced(m.Verdict),
                                    QuantityText.Of(m.Residual),
                                    QuantityText.Of(m.Loss),
                                    (
                                        MasterWords.Reason(answer, m) is var why
                                        && words.Reason.Contains(why, StringComparison.Ordinal)
                                            ? "as said above."
                                            : why
                                    ) + (m.Scale.Length > 0 ? $" Read as {m.Scale}." : ""),
                                ]
                        ),
                    ]
                ),
                .. answer.Shoot.Count > 0
                    ? [AnswerTable.List("Shoot at least", answer.Shoot.Select(s => DarkLibraryWords.Shoot(answer, s)))]
                    : Array.Empty<AnswerTable>(),
            ],
        };
    }

    private static MasterMember Member(DarkLibraryAnswer answer, MasterVerdict master) =>
        new(
            master.File,
            master.Verdict,
            master.Residual,
            master.Loss,
            master.StackNoise,
            master.Parts,
            master.Patches,
            master.SignalRatio,
            master.Scale,
            master.Realigned,
            master.Exposure,
            master.Temperature,
            master.FreshFrames,
            MasterWords.Reason(answer, master)
        );

    private static ShootMember Member(DarkLibraryAnswer answer, DarksToShoot darks) =>
        new(darks.Exposure, darks.Temperature, darks.Frames, DarkLibraryWords.Shoot(answer, darks));
}

/// <summary>Fields that only <c>darks check</c> adds to the JSON document.</summary>
internal sealed record DarkLibraryFields(IReadOnlyList<MasterMember> Masters, IReadOnlyList<ShootMember> Shoot);

/// <summary>The verdict on one master.</summary>
internal sealed record MasterMember(
    string File,
    CheckVerdict Verdict,
    Measurement? Residual,
    Measurement? Loss,
    Measurement? StackNoise,
    IReadOnlyList<ResidualPart> Parts,
    IReadOnlyList<GrowingPatch> Patches,
    Measurement? SignalRatio,
    string Scale,
    string? Realigned,
    double? Exposure,
    double? Temperature,
    int FreshFrames,
    string Reason
);

/// <summary>Darks to shoot.</summary>
internal sealed record ShootMember(double? Exposure, double? Temperature, int Frames, string Reason);
