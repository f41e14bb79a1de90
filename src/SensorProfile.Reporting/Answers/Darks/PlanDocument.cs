using SensorProfile.Decisions.DarkPlan;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks plan</c>.</summary>
internal static class PlanDocument
{
    /// <summary>Terminal, JSON and page all take the answer from here.</summary>
    /// <param name="answer">The plan.</param>
    /// <param name="csv">Where its list was written; null for nowhere.</param>
    /// <param name="taken">The temperature that was taken; null when one was given.</param>
    /// <param name="findings">What else was found.</param>
    public static AnswerDocument Of(
        PlanAnswer answer,
        string? csv = null,
        AssumedTemperature? taken = null,
        params IEnumerable<Finding> findings
    ) =>
        DecisionDocument.Of(
            "darks plan",
            answer,
            PlanWords.Of(answer, taken),
            JsonNodes.Field("masters", answer.Masters.Select(master => Member(answer, master))),
            JsonNodes.Field("unplanned", answer.Unplanned.Select(Member)),
            JsonNodes.Field("saving", answer.Saving),
            JsonNodes.Field("stacks", answer.Stacks.Select(DarkCountWords.Member))
        ) with
        {
            Findings = [.. answer.Findings, .. PlanWords.Findings(answer), .. findings],
            RulesOfThumb = PlanWords.RulesOfThumb(answer),
            Tables = [Masters(answer)],
            Lines = csv is null ? [] : [$"The list as a table: {csv}"],
        };

    private static object Member(PlanAnswer answer, MasterPlan master) =>
        new
        {
            master.Exposure,
            master.Temperature,
            master.Settings,
            master.Frames,
            master.ServesFrom,
            master.ServesTo,
            Reason = PlanWords.Reason(answer, master),
            When = PlanWords.When(master),
            master.Seconds,
            master.Bytes,
            master.FramesInterval,
        };

    private static object Member(UnplannedLights lights) =>
        new
        {
            lights.Exposure,
            lights.From,
            lights.To,
            lights.Lights,
            Reason = lights.Refusal.Message,
            lights.Settling,
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
                            PlanWords.When(m),
                            PlanWords.Reason(answer, m),
                        ]
                ),
            ]
        );

    private static string Interval(MasterPlan master) =>
        master.FramesInterval is { Low: { } low, High: { } high } && high > low
            ? $"{QuantityText.Number(low)} … {QuantityText.Number(high)}"
            : "";
}
