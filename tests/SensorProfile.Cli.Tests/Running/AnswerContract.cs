using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using Json.Schema;
using SensorProfile.Cli.Printing;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// Holds what <c>--json</c> printed to the schema that <c>schema</c> prints: no member, of the answer or of a record in it,
/// that it does not name, none of another kind.
/// </summary>
internal static class AnswerContract
{
    private static readonly EvaluationOptions options = new()
    {
        OutputFormat = OutputFormat.List,
        RequireFormatValidation = true,
    };

    private static readonly ConcurrentDictionary<string, JsonSchema> known = [];

    public static IReadOnlyList<string> Breaches(JsonNode document)
    {
        string command = (string)document["command"]!;
        EvaluationResults results = known.GetOrAdd(command, Read).Evaluate(document, options);
        return results.IsValid
            ? []
            :
            [
                .. results
                    .Details.Where(d => d.HasErrors)
                    .SelectMany(d => d.Errors!.Select(e => $"{command}{d.InstanceLocation}: {e.Value}")),
            ];
    }

    private static JsonSchema Read(string command)
    {
        JsonNode schema = JsonNode.Parse(AnswerSchema.Json(AnswerShapes.All.Single(s => s.Command == command)))!;
        Close(schema);
        return JsonSchema.FromText(schema.ToJsonString());
    }

    /// <summary>
    /// The schema leaves room for members of later versions; for what this version prints, what it does not name is a
    /// breach.
    /// </summary>
    private static void Close(JsonNode? schema)
    {
        if (schema is JsonArray items)
            foreach (JsonNode? item in items)
                Close(item);
        if (schema is not JsonObject members)
            return;
        foreach ((string _, JsonNode? member) in members)
            Close(member);
        if (members["properties"] is JsonObject)
            members.TryAdd("additionalProperties", false);
    }
}
