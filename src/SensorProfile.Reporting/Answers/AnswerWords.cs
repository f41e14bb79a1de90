using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.Drift.OverTheYears;

namespace SensorProfile.Reporting.Answers;

/// <summary>The words of an answer, made from its facts.</summary>
/// <param name="Sentence">One sentence that a person can act on.</param>
/// <param name="Reason">Why, in one or two sentences.</param>
/// <param name="Verdict">The member of the answer's own enumeration.</param>
internal sealed record AnswerWords(string Sentence, string Reason, Enum Verdict)
{
    /// <summary>One word for scripts: the verdict in kebab-case.</summary>
    public string Word => EnumWord.Of(Verdict);

    /// <summary>Whether the measurements cannot give the answer.</summary>
    public bool CannotTell =>
        Verdict
            is CheckVerdict.CannotTell
                or DriftVerdict.CannotTell
                or MatchVerdict.CannotTell
                or PlanVerdict.CannotTell
                or PredictionVerdict.CannotTell
                or SetpointVerdict.CannotTell
                or ToleranceVerdict.CannotTell;

    /// <summary>Cautions for people and equipment.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}
