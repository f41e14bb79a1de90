using SensorProfile.Decisions.DarkPlan;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks plan</c>.</summary>
internal static class PlanDocument
{
    public static AnswerDocument Of(PlanAnswer answer, string? csv) =>
        DecisionDocument.Of(
            "darks plan",
            answer,
            JsonNodes.Field("masters", answer.Masters),
            JsonNodes.Field("unplanned", answer.Unplanned),
            JsonNodes.Field("saving", answer.Saving),
            JsonNodes.Field("stacks", answer.Stacks)
        ) with
        {
            Tables = [Masters(answer)],
            Lines = csv is null ? [] : [$"The list as a table: {csv}"],
        };

    private static AnswerTable Masters(PlanAnswer answer) =>
        new(
            "",
            [">frames", ">95 %", ">exposure", ">sensor", "settings", "when", "reason"],
            [
                .. answer.Masters.Select(m =>
                    (IReadOnlyList<string>)
                        [
                            QuantityText.Count(m.Frames),
                            Interval(m),
                            QuantityText.Number(m.Exposure) + " s",
                            QuantityText.Temperature(m.Temperature),
                            SettingsText.Of(m.Settings),
                            m.When,
                            m.Reason,
                        ]
                ),
            ]
        );

    private static string Interval(MasterPlan master) =>
        master.FramesInterval is { Low: { } low, High: { } high } && high > low
            ? $"{QuantityText.Number(low)} … {QuantityText.Number(high)}"
            : "";
}
