using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>Keeps non-finite numbers out of a profile.</summary>
/// <remarks>
/// Values that no sensor gives (stuck, scrambled, sheared) can leave a fit without a finite answer. Such a number is
/// removed by emptying the innermost place around it that may be empty: a quantity becomes null, a point leaves its
/// list.
/// </remarks>
internal static class FiniteMode
{
    private static readonly JsonSerializerOptions options = new(ProfileJson.Instance.Options)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>The profile without non-finite numbers, and the places that were emptied.</summary>
    /// <returns>The profile itself when all its numbers are finite.</returns>
    public static (ModeProfile Profile, IReadOnlyList<string> Emptied) RemoveNonFinite(ModeProfile profile)
    {
        JsonTypeInfo info = options.GetTypeInfo(typeof(ModeProfile));
        JsonNode node = JsonSerializer.SerializeToNode(profile, info)!;
        List<string> emptied = [];
        IsWhole(node, info, "", emptied);
        return emptied.Count == 0 ? (profile, emptied) : ((ModeProfile)node.Deserialize(info)!, emptied);
    }

    // False when the node holds a non-finite number and nothing inside it may be empty.
    private static bool IsWhole(JsonNode node, JsonTypeInfo info, string place, List<string> emptied) =>
        (info.Kind, node) switch
        {
            (JsonTypeInfoKind.Object, JsonObject fields) => FieldsAreWhole(fields, info, place, emptied),
            (JsonTypeInfoKind.Enumerable, JsonArray items) => ItemsAreWhole(items, info, place, emptied),
            _ => !(IsNumber(info.Type) && node.GetValueKind() == JsonValueKind.String),
        };

    private static bool FieldsAreWhole(JsonObject fields, JsonTypeInfo info, string place, List<string> emptied)
    {
        foreach (JsonPropertyInfo property in info.Properties)
        {
            if (fields[property.Name] is not { } value)
                continue;
            string within = place.Length == 0 ? property.Name : $"{place}.{property.Name}";
            if (IsWhole(value, options.GetTypeInfo(property.PropertyType), within, emptied))
                continue;
            if (!MayBeNull(property))
                return false;
            fields[property.Name] = null;
            emptied.Add(within);
        }
        return true;
    }

    // In a list of numbers the position has a meaning, so such a list is removed as a whole.
    private static bool ItemsAreWhole(JsonArray items, JsonTypeInfo info, string place, List<string> emptied)
    {
        JsonTypeInfo element = options.GetTypeInfo(info.ElementType!);
        for (int i = items.Count - 1; i >= 0; i--)
        {
            string within = FormattableString.Invariant($"{place}[{i}]");
            if (items[i] is not { } item || IsWhole(item, element, within, emptied))
                continue;
            if (element.Kind != JsonTypeInfoKind.Object)
                return false;
            items.RemoveAt(i);
            emptied.Add(within);
        }
        return true;
    }

    private static bool MayBeNull(JsonPropertyInfo property) =>
        property.PropertyType.IsValueType
            ? Nullable.GetUnderlyingType(property.PropertyType) is not null
            : property.IsSetNullable;

    private static bool IsNumber(Type type) =>
        (Nullable.GetUnderlyingType(type) ?? type) is var number
        && (number == typeof(double) || number == typeof(float));
}
