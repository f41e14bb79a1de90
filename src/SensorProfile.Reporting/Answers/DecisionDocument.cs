using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Reporting.Answers;

/// <summary>Turns the answer of a decision into the reply that is printed.</summary>
internal static class DecisionDocument
{
    /// <summary>Combines the facts of an answer with the words for them.</summary>
    /// <param name="command">Its name as typed.</param>
    /// <param name="answer">The facts.</param>
    /// <param name="words">The words.</param>
    /// <param name="fields">Fields that only this command adds to the JSON document.</param>
    public static AnswerDocument Compose(string command, Answer answer, AnswerWords words, object fields) =>
        new()
        {
            Command = command,
            Sentence = words.Sentence,
            Reason = words.Reason,
            Verdict = words.Word,
            Quantities = [.. answer.Quantities.Select(q => Quantity(answer, q.Key, q.Value))],
            Fields = fields,
            Settling = answer.Settling,
            Colours = answer.Colours,
            Findings = answer.Findings,
            Cautions = words.Cautions,
            RulesOfThumb = answer.RulesOfThumb,
            CannotTell = words.CannotTell,
        };

    /// <summary>The reply to a valid question that the profile cannot answer.</summary>
    public static AnswerDocument CannotTell(string command, DecisionRefusedException refusal) =>
        new()
        {
            Command = command,
            Sentence = refusal.Message,
            Verdict = Answer.CannotTell,
            Findings = [refusal.ToFinding()],
            CannotTell = true,
        };

    private static AnswerQuantity Quantity(Answer answer, string name, Measurement? value) =>
        new(name, QuantityLabels.Find(name), value)
        {
            Interval = answer.Intervals.GetValueOrDefault(name),
            Absent = name.StartsWith("tolerance", StringComparison.Ordinal) ? "no limit" : "cannot tell",
        };
}
