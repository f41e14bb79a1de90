using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using Json.Schema;
using SensorProfile.Cli.Printing;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// Holds what <c>--json</c> printed to the schema that <c>schema</c> prints: no member that it does not name, none of
/// another kind.
/// </summary>
internal static class AnswerContract
{
    private static readonly EvaluationOptions options = new()
    {
        OutputFormat = OutputFormat.List,
        RequireFormatValidation = true,
    };

    private static readonly ConcurrentDictionary<string, (JsonSchema Schema, string[] Members)> known = [];

    public static IReadOnlyList<string> Breaches(JsonNode document)
    {
        string command = (string)document["command"]!;
        (JsonSchema schema, string[] members) = known.GetOrAdd(command, Read);
        EvaluationResults results = schema.Evaluate(document, options);
        return
        [
            .. document.AsObject().Select(m => m.Key).Except(members).Select(m => $"{command} does not know {m}"),
            .. results.IsValid
                ? []
                : results
                    .Details.Where(d => d.HasErrors)
                    .SelectMany(d => d.Errors!.Select(e => $"{command}{d.InstanceLocation}: {e.Value}")),
        ];
    }

    private static (JsonSchema, string[]) Read(string command)
    {
        string text = AnswerSchema.Json(AnswerShapes.All.Single(s => s.Command == command));
        JsonObject members = JsonNode.Parse(text)!["properties"]!.AsObject();
        return (JsonSchema.FromText(text), [.. members.Select(m => m.Key)]);
    }
}
