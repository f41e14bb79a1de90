using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;

namespace SensorProfile.Profiles.Files;

/// <summary>The JSON Schema of <c>profile.json</c>, made from the records themselves.</summary>
/// <remarks>
/// JSON Schema draft 2020-12. Every field is required, because the program always writes it (null where nothing was
/// measured); unknown fields are allowed, because later versions may add some.
/// </remarks>
public static class ProfileSchema
{
    private const string Resource = "SensorProfile.Profiles.descriptions.json";

    /// <summary>The schema as indented text ending in a line feed.</summary>
    public static string Json() => Build().ToJsonString(ProfileJson.Instance.Options) + "\n";

    private static JsonObject Build()
    {
        var definitions = new SortedDictionary<string, JsonNode>(StringComparer.Ordinal);
        var descriptions = Descriptions();
        var options = new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = (context, node) => Transform(context, node, definitions, descriptions),
        };
        var root = (JsonObject)ProfileJson.Instance.Options.GetJsonSchemaAsNode(typeof(CameraProfile), options);
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:sensorprofile:profile:{CameraProfile.CurrentSchemaVersion}",
            ["title"] = "Camera profile",
            ["description"] = descriptions.GetValueOrDefault(nameof(CameraProfile), ""),
        };
        foreach ((string name, JsonNode? value) in root)
            schema[name] = value?.DeepClone();
        schema["$defs"] = new JsonObject(definitions.Select(d => KeyValuePair.Create(d.Key, (JsonNode?)d.Value)));
        return schema;
    }

    /// <summary>
    /// Moves every record into <c>$defs</c>, so that each is written once, and adds what the types alone do not say.
    /// </summary>
    private static JsonNode Transform(
        JsonSchemaExporterContext context,
        JsonNode node,
        SortedDictionary<string, JsonNode> definitions,
        Dictionary<string, string> descriptions
    )
    {
        if (node is not JsonObject schema)
            return node;
        Type type = context.TypeInfo.Type;
        JsonNode result = schema;
        // A record that is an element of two lists comes as a pointer to the first of them, which is about to move.
        if (schema.ContainsKey("$ref") && context.TypeInfo.Kind == JsonTypeInfoKind.Object)
            result = new JsonObject { ["$ref"] = $"#/$defs/{JsonNamingPolicy.CamelCase.ConvertName(type.Name)}" };
        if (schema["properties"] is JsonObject properties)
        {
            schema["required"] = new JsonArray([.. properties.Select(property => (JsonNode)property.Key)]);
            bool nullable = schema["type"] is JsonArray;
            schema["type"] = "object";
            if (type == typeof(CameraProfile))
                return schema;
            result = Reference(type, schema, nullable, definitions, descriptions);
        }
        if (context.PropertyInfo is { } owner)
            Describe((JsonObject)result, owner.DeclaringType.Name, owner.Name, descriptions);
        return result;
    }

    private static JsonObject Reference(
        Type type,
        JsonObject schema,
        bool nullable,
        SortedDictionary<string, JsonNode> definitions,
        Dictionary<string, string> descriptions
    )
    {
        string name = JsonNamingPolicy.CamelCase.ConvertName(type.Name);
        if (!definitions.ContainsKey(name))
        {
            var definition = new JsonObject
            {
                ["title"] = type.Name,
                ["description"] = descriptions.GetValueOrDefault(type.Name, ""),
            };
            foreach ((string key, JsonNode? value) in schema)
                definition[key] = value?.DeepClone();
            definitions[name] = definition;
        }
        var reference = new JsonObject { ["$ref"] = $"#/$defs/{name}" };
        return nullable
            ? new JsonObject { ["anyOf"] = new JsonArray(reference, new JsonObject { ["type"] = "null" }) }
            : reference;
    }

    private static void Describe(
        JsonObject schema,
        string type,
        string property,
        Dictionary<string, string> descriptions
    )
    {
        if (descriptions.TryGetValue($"{type}.{property}", out string? description))
            schema.Insert(0, "description", description);
        switch ($"{type}.{property}")
        {
            case "Measurement.standardUncertainty" or "ModelParameter.standardUncertainty" or "Measurement.samples":
                schema["minimum"] = 0;
                break;
            case "CameraProfile.schemaVersion":
                schema["minimum"] = 1;
                schema["maximum"] = CameraProfile.CurrentSchemaVersion;
                break;
            case "CameraProfile.createdUtc" or "FrameSummary.startUtc":
                schema["format"] = "date-time";
                break;
            default:
                break;
        }
    }

    /// <summary>
    /// The meaning of each record and field, keyed "Type" and "Type.field": the summaries of the code; a test keeps the
    /// two equal.
    /// </summary>
    internal static Dictionary<string, string> Descriptions()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"The program was built without {Resource}.");
        return JsonSerializer.Deserialize(stream, DescriptionsJson.Default.DictionaryStringString)!;
    }
}
