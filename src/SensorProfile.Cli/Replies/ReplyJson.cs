using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SensorProfile.Cli.Replies;

/// <summary>A reply as the one JSON document that <c>--json</c> prints. Names and numbers are part of the contract.</summary>
internal static class ReplyJson
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(Reply reply)
    {
        JsonObject document = new()
        {
            ["command"] = reply.Command,
            ["sentence"] = reply.Sentence,
            ["verdict"] = reply.Verdict,
            ["reason"] = reply.Reason,
            ["quantities"] = new JsonObject(reply.Quantities.Select(q => KeyValuePair.Create(q.Name, Quantity(q.Value)))),
        };
        if (reply.Quantities.Any(q => q.Interval is not null))
            document["intervals"] = new JsonObject(reply.Quantities.Where(q => q.Interval is not null).Select(q => KeyValuePair.Create(q.Name, (JsonNode?)Interval(q.Interval!.Value))));
        foreach ((string name, JsonNode? value) in reply.Fields) document[name] = value;
        document["findings"] = new JsonArray([.. reply.Findings.Select(Finding)]);
        document["cautions"] = Texts(reply.Cautions);
        document["rulesOfThumb"] = Texts(reply.RulesOfThumb);
        return document.ToJsonString(Written) + "\n";
    }

    public static JsonNode? Quantity(Measurement? quantity) => quantity is null ? null : new JsonObject
    {
        ["value"] = Number(quantity.Value),
        ["standardUncertainty"] = Number(quantity.StandardUncertainty),
        ["unit"] = quantity.Unit,
        ["samples"] = quantity.Samples,
        ["method"] = quantity.Method,
    };

    /// <summary>JSON has no infinity: what has no end is null.</summary>
    public static JsonNode? Number(double? value) => value is { } number && double.IsFinite(number) ? JsonValue.Create(number) : null;

    public static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)JsonValue.Create(t))]);

    private static JsonArray Interval((double? Low, double? High) ends) => new JsonArray(Number(ends.Low), Number(ends.High));

    private static JsonObject Finding(Finding finding) => new JsonObject
    {
        ["code"] = finding.Code,
        ["severity"] = JsonNamingPolicy.KebabCaseLower.ConvertName(finding.Severity.ToString()),
        ["message"] = finding.Message,
        ["frames"] = Texts(finding.Frames),
    };
}
