using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Parameters;

/// <summary>
/// Prepares a JSON document for reading: rejects the first unknown field, and overlays the given values on the
/// defaults.
/// </summary>
/// <remarks>
/// The defaults must be merged in, because source-generated readers set every missing init-only property to zero or
/// null instead of leaving its initial value.
/// </remarks>
internal static class FieldCheck
{
    /// <summary>Walks the document along the metadata of its type.</summary>
    /// <param name="element">The JSON as written.</param>
    /// <param name="type">Type that it describes.</param>
    /// <param name="file">Name for error messages.</param>
    /// <param name="path">Place in the JSON.</param>
    /// <param name="initial">Default at this place; null when there is none.</param>
    /// <exception cref="CameraDescriptionException">An unknown field.</exception>
    public static JsonNode? Complete(
        JsonElement element,
        JsonTypeInfo type,
        string file,
        string path,
        JsonNode? initial
    )
    {
        if (type.Kind == JsonTypeInfoKind.Object && element.ValueKind == JsonValueKind.Object)
        {
            JsonObject complete = initial?.DeepClone().AsObject() ?? DefaultOf(type.Type) ?? [];
            foreach (JsonProperty field in element.EnumerateObject())
            {
                string at = $"{path}.{field.Name}";
                JsonPropertyInfo known = type.Properties.FirstOrDefault(p => p.Name == field.Name)
                    ?? throw new CameraDescriptionException(
                        file,
                        at,
                        "there is no such field.",
                        Suggest(field.Name, type)
                    );
                complete[field.Name] = Complete(
                    field.Value,
                    type.Options.GetTypeInfo(known.PropertyType),
                    file,
                    at,
                    complete[field.Name]
                );
            }
            return complete;
        }
        if (type.Kind == JsonTypeInfoKind.Enumerable && element.ValueKind == JsonValueKind.Array)
        {
            JsonTypeInfo item = type.Options.GetTypeInfo(type.ElementType!);
            return new JsonArray([
                .. element.EnumerateArray().Select((e, i) => Complete(e, item, file, $"{path}[{i}]", null)),
            ]);
        }
        return JsonSerializer.SerializeToNode(element, SimulationJson.Default.JsonElement);
    }

    private static JsonObject? DefaultOf(Type type)
    {
        object? initial =
            type == typeof(CameraDescription) ? new CameraDescription { Width = 1, Height = 1 }
            : type == typeof(DarkCurrentParameters) ? new DarkCurrentParameters()
            : type == typeof(HotPatch) ? new HotPatch()
            : type == typeof(Glow) ? new Glow()
            : type == typeof(Tap) ? new Tap()
            : type == typeof(Shot) ? new Shot { Kind = FrameKind.Dark }
            : type == typeof(Fault) ? new Fault()
            : type == typeof(SensorPhysics) ? new SensorPhysics()
            : type == typeof(DefectPopulation) ? new DefectPopulation()
            : type == typeof(SwitchingTraps) ? new SwitchingTraps()
            : type == typeof(Persistence) ? new Persistence()
            : null;
        JsonObject? text = initial is null
            ? null
            : JsonSerializer.SerializeToNode(initial, type, SimulationJson.Default)!.AsObject();
        string[] required =
            initial is CameraDescription ? ["width", "height"]
            : initial is Shot ? ["kind"]
            : [];
        foreach (string field in required)
        {
            text!.Remove(field); // these are required
        }
        return text;
    }

    private static string Suggest(string name, JsonTypeInfo type)
    {
        string[] known = [.. type.Properties.Select(p => p.Name)];
        string nearest = known.MinBy(k => Distance(k, name))!;
        return Distance(nearest, name) <= Math.Max(1, name.Length / 3)
            ? $"Did you mean {nearest}?"
            : $"Known here: {string.Join(", ", known)}.";
    }

    /// <summary>Number of letters to insert, delete or replace (Levenshtein 1966), ignoring case.</summary>
    private static int Distance(string a, string b)
    {
        int[] row = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int exchange = diagonal + (char.ToUpperInvariant(a[i - 1]) == char.ToUpperInvariant(b[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(exchange, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.Length];
    }
}
