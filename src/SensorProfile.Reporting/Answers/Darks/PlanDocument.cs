using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks plan</c>.</summary>
internal static class PlanDocument
{
    public static AnswerShape Shape { get; } = AnswerShape.Of<PlanVerdict>("darks plan", typeof(PlanFields));

    /// <summary>The answer that terminal, JSON and page all show.</summary>
    /// <param name="answer">The plan.</param>
    /// <param name="csv">File that its list was written to; null for none.</param>
    /// <param name="taken">The assumed temperature; null when one was given.</param>
    /// <param name="findings">Further findings.</param>
    public static AnswerDocument Compose(
        PlanAnswer answer,
        string? csv = null,
        AssumedTemperature? taken = null,
        params IEnumerable<Finding> findings
    ) =>
        DecisionDocument.Compose(
            "darks plan",
            answer,
            PlanWords.Phrase(answer, taken),
            new PlanFields(
                [.. answer.Masters.Select(master => Member(answer, master))],
                [.. answer.Unplanned.Select(Member)],
                answer.Saving,
                [.. answer.Stacks.Select(DarkCountWords.Member)]
            )
        ) with
        {
            Findings = [.. answer.Findings, .. PlanWords.Findings(answer), .. findings],
            RulesOfThumb = PlanWords.RulesOfThumb(answer),
            Tables = [Masters(answer)],
            Lines = csv is null ? [] : [$"The list as a table: {csv}"],
        };

    private static PlannedMaster Member(PlanAnswer answer, MasterPlan master) =>
        new(
            master.Exposure,
            master.Temperature,
            master.Settings,
            master.Frames,
            master.ServesFrom,
            master.ServesTo,
            PlanWords.Reason(answer, master),
            PlanWords.When(master),
            master.Seconds,
            master.Bytes,
            master.FramesInterval
        );

    private static UnplannedMember Member(UnplannedLights lights) =>
        new(lights.Exposure, lights.From, lights.To, lights.Lights, lights.Refusal.Message, lights.Settling);

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

/// <summary>Fields that only <c>darks plan</c> adds to the JSON document.</summary>
internal sealed record PlanFields(
    IReadOnlyList<PlannedMaster> Masters,
    IReadOnlyList<UnplannedMember> Unplanned,
    DitherSaving? Saving,
    IReadOnlyList<StackMember> Stacks
);

/// <summary>A master to shoot.</summary>
internal sealed record PlannedMaster(
    double Exposure,
    double Temperature,
    ModeSettings Settings,
    int Frames,
    double ServesFrom,
    double ServesTo,
    string Reason,
    string When,
    double Seconds,
    double Bytes,
    Interval FramesInterval
);

/// <summary>Lights for which no master can be planned.</summary>
internal sealed record UnplannedMember(
    double Exposure,
    double From,
    double To,
    int Lights,
    string Reason,
    IReadOnlyList<SettlingFrames> Settling
);
