using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Reporting.Answers;

/// <summary>The JSON Schema of what <c>--json</c> prints, generated from the records that are printed.</summary>
/// <remarks>
/// JSON Schema draft 2020-12. A document without an answer has only the members common to all commands: sentence,
/// verdict, findings. Unknown members are allowed, because later versions may add some.
/// </remarks>
internal sealed class AnswerSchema
{
    private readonly SortedDictionary<string, JsonNode> records = new(StringComparer.Ordinal);
    private readonly JsonSchemaExporterOptions exporting;

    private AnswerSchema() =>
        exporting = new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = Transform,
        };

    /// <summary>The schema as indented text ending in a line feed.</summary>
    public static string Json(AnswerShape shape) => JsonNodes.Text(new AnswerSchema().Build(shape));

    private JsonObject Build(AnswerShape shape)
    {
        JsonObject members = new()
        {
            ["command"] = new JsonObject { ["const"] = shape.Command },
            ["sentence"] = Described("One sentence to act on.", typeof(string)),
            ["verdict"] = new JsonObject
            {
                ["enum"] = new JsonArray([.. shape.Verdicts.Union([Answer.CannotTell]).Select(v => (JsonNode)v)]),
            },
            ["reason"] = Described("Why, in a sentence or two.", typeof(string)),
            ["quantities"] = Described(
                "The numbers by name; null where there is none, and a finding says why.",
                typeof(IReadOnlyDictionary<string, Measurement?>)
            ),
            ["intervals"] = Described(
                "95 % intervals of those that are not a value ± its uncertainty.",
                typeof(IReadOnlyDictionary<string, Interval>)
            ),
        };
        foreach (
            IGrouping<string, JsonNode> member in shape.Fields.SelectMany(Members).GroupBy(m => m.Name, m => m.Type)
        )
            members[member.Key] = OneOf([.. member]);
        members["settling"] = Described("Frames that would settle it.", typeof(IReadOnlyList<SettlingFrames>));
        members["colours"] = Described(
            "Each colour's answer, where the colours have gains of their own.",
            typeof(IReadOnlyList<ColourAnswer>)
        );
        members["assumptions"] = Described(
            "What the answer assumes besides the measurements.",
            typeof(IReadOnlyList<AnswerAssumption>)
        );
        members["findings"] = Described("What was found on the way.", typeof(IReadOnlyList<Finding>));
        members["cautions"] = Described("Cautions for people and equipment.", typeof(IReadOnlyList<string>));
        members["rulesOfThumb"] = Described("Common rules of thumb beside the answer.", typeof(IReadOnlyList<string>));
        string[] always =
        [
            "command",
            "sentence",
            "verdict",
            "reason",
            "quantities",
            "findings",
            "cautions",
            "rulesOfThumb",
        ];
        return new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:sensorprofile:answer:{shape.Command.Replace(' ', '-')}:1",
            ["title"] = $"Answer of {shape.Command}",
            ["type"] = "object",
            ["properties"] = members,
            ["required"] = new JsonArray([.. always.Select(name => (JsonNode)name)]),
            ["$defs"] = new JsonObject(records.Select(r => KeyValuePair.Create(r.Key, (JsonNode?)r.Value))),
        };
    }

    private JsonObject Described(string meaning, Type type)
    {
        var schema = (JsonObject)Of(type);
        schema.Insert(0, "description", meaning);
        return schema;
    }

    private IEnumerable<(string Name, JsonNode Type)> Members(Type fields)
    {
        _ = Of(fields);
        JsonNode record = records[NameOf(fields)];
        _ = records.Remove(NameOf(fields)); // its members are part of the document itself
        return ((JsonObject)record["properties"]!).Select(p => (p.Key, p.Value!.DeepClone()));
    }

    private static JsonNode OneOf(JsonNode[] types) =>
        types.Skip(1).All(other => JsonNode.DeepEquals(other, types[0]))
            ? types[0]
            : new JsonObject { ["anyOf"] = new JsonArray([.. types]) };

    private JsonNode Of(Type type) => JsonNodes.Options.GetJsonSchemaAsNode(type, exporting);

    /// <summary>Moves every record into <c>$defs</c>, so that each is written once.</summary>
    private JsonNode Transform(JsonSchemaExporterContext context, JsonNode node)
    {
        JsonTypeInfo info = context.TypeInfo;
        Type type = Nullable.GetUnderlyingType(info.Type) ?? info.Type;
        if (type == typeof(double))
            return Kinds("number"); // values that are not finite are written as null
        if (node is not JsonObject schema)
            return node;
        // a repeated type is exported as a pointer to its first occurrence, which does not say whether this one may be null
        bool pointer = schema.ContainsKey("$ref"),
            orNull = pointer && context.PropertyInfo is { IsGetNullable: true };
        if (info.Kind is JsonTypeInfoKind.Enumerable or JsonTypeInfoKind.Dictionary)
            return pointer ? Repeated(info.Type, orNull) : Nullables(schema);
        if (info.Kind != JsonTypeInfoKind.Object)
            return schema;
        bool nullable = orNull || schema["type"] is JsonArray;
        string name = NameOf(type);
        if (schema["properties"] is JsonObject members)
        {
            schema["type"] = "object";
            schema["required"] = new JsonArray([.. members.Select(m => (JsonNode)m.Key)]);
            records[name] = schema.DeepClone();
        }
        var reference = new JsonObject { ["$ref"] = $"#/$defs/{name}" };
        return nullable ? OrNull(reference) : reference;
    }

    /// <summary>Exports a repeated list again: its pointer would dangle, since the record it points to has moved.</summary>
    private JsonNode Repeated(Type type, bool orNull) => orNull ? OrNull(Of(type)) : Of(type);

    /// <summary>Lets the values of a dictionary be null: its type does not say whether they may be.</summary>
    private static JsonObject Nullables(JsonObject schema)
    {
        if (schema["additionalProperties"] is JsonObject value && !value.ContainsKey("anyOf"))
            schema["additionalProperties"] = OrNull(value.DeepClone());
        return schema;
    }

    private static JsonObject OrNull(JsonNode schema) =>
        new() { ["anyOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }) };

    private static JsonObject Kinds(string kind) => new() { ["type"] = new JsonArray(kind, "null") };

    private static string NameOf(Type type) => JsonNamingPolicy.CamelCase.ConvertName(type.Name);
}
