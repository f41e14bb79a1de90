using SensorProfile.Drift.MasterDarks;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks check</c>.</summary>
internal static class DarkLibraryDocument
{
    public static AnswerDocument Of(DarkLibraryAnswer answer) =>
        DecisionDocument.Of(
            "darks check",
            answer,
            JsonNodes.Field("masters", answer.Masters),
            JsonNodes.Field("shoot", answer.Shoot)
        ) with
        {
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
                                        answer.Reason.Contains(m.Reason, StringComparison.Ordinal)
                                            ? "as said above."
                                            : m.Reason
                                    ) + (m.Scale.Length > 0 ? $" Read as {m.Scale}." : ""),
                                ]
                        ),
                    ]
                ),
                .. answer.Shoot.Count > 0
                    ? [AnswerTable.List("Shoot at least", answer.Shoot.Select(s => s.Reason))]
                    : Array.Empty<AnswerTable>(),
            ],
        };
}
