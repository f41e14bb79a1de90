using SensorProfile.Drift.MasterDarks;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks check</c>.</summary>
internal static class DarkLibraryDocument
{
    /// <summary>Terminal, JSON and report all take the answer from here.</summary>
    public static AnswerDocument Of(DarkLibraryAnswer answer)
    {
        AnswerWords words = DarkLibraryWords.Of(answer);
        return DecisionDocument.Of(
            "darks check",
            answer,
            words,
            JsonNodes.Field("masters", answer.Masters.Select(master => Member(answer, master))),
            JsonNodes.Field("shoot", answer.Shoot.Select(darks => Member(answer, darks)))
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

    private static object Member(DarkLibraryAnswer answer, MasterVerdict master) =>
        new
        {
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
            Reason = MasterWords.Reason(answer, master),
        };

    private static object Member(DarkLibraryAnswer answer, DarksToShoot darks) =>
        new
        {
            darks.Exposure,
            darks.Temperature,
            darks.Frames,
            Reason = DarkLibraryWords.Shoot(answer, darks),
        };
}
