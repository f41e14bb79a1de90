using System.Text.Json.Nodes;

namespace SensorProfile.Reporting.Answers;

/// <summary>
/// A reply as the single JSON document that <c>--json</c> prints. Its names and numbers are a contract with scripts.
/// </summary>
internal static class AnswerJson
{
    public static string Of(AnswerDocument reply)
    {
        JsonObject document = new()
        {
            ["command"] = reply.Command,
            ["sentence"] = reply.Sentence,
            ["verdict"] = reply.Verdict,
            ["reason"] = reply.Reason,
            ["quantities"] = Members(reply.Quantities, q => JsonNodes.Of(q.Value)),
        };
        AnswerQuantity[] bounded = [.. reply.Quantities.Where(q => q.Interval is not null)];
        if (bounded.Length > 0)
            document["intervals"] = Members(bounded, q => JsonNodes.Of(q.Interval));
        if (JsonNodes.Of(reply.Fields) is JsonObject fields)
            foreach ((string name, JsonNode? value) in fields)
                document[name] = value?.DeepClone(); // a node has one parent
        if (reply.Settling.Count > 0)
            document["settling"] = JsonNodes.Of(reply.Settling);
        if (reply.Colours.Count > 0)
            document["colours"] = JsonNodes.Of(reply.Colours);
        if (reply.Assumptions.Count > 0)
            document["assumptions"] = JsonNodes.Of(reply.Assumptions);
        document["findings"] = JsonNodes.Of(reply.Findings);
        document["cautions"] = JsonNodes.Of(reply.Cautions);
        document["rulesOfThumb"] = JsonNodes.Of(reply.RulesOfThumb);
        return JsonNodes.Text(document);
    }

    private static JsonObject Members(IEnumerable<AnswerQuantity> quantities, Func<AnswerQuantity, JsonNode?> value) =>
        new(quantities.Select(q => KeyValuePair.Create(q.Name, value(q))));
}
