using System.Collections;
using System.Text.Json.Serialization.Metadata;

namespace SensorProfile.Profiles.Files;

/// <summary>
/// Enforces the rule that a profile has no NaN and no infinity: what was not measured is null, with a finding.
/// </summary>
internal static class FiniteNumbers
{
    /// <summary>Does nothing when every number is finite.</summary>
    /// <exception cref="ArgumentException">Names the first number that is not, by its place in the
    /// document.</exception>
    public static void Require(CameraProfile profile)
    {
        if (FirstNonFinite(profile, "$") is { } place)
            throw new ArgumentException(
                $"{place} is not a finite number; what could not be measured is null in a profile, with a finding "
                    + "that says why.",
                nameof(profile)
            );
    }

    private static string? FirstNonFinite(object? value, string place) =>
        value switch
        {
            double number => double.IsFinite(number) ? null : place,
            null or string or ValueType => null,
            IEnumerable items => items
                .Cast<object?>()
                .Select((item, index) => FirstNonFinite(item, $"{place}[{index}]"))
                .FirstOrDefault(found => found is not null),
            _ => Fields(value)
                .Select(field => FirstNonFinite(field.Get!(value), $"{place}.{field.Name}"))
                .FirstOrDefault(found => found is not null),
        };

    private static IEnumerable<JsonPropertyInfo> Fields(object record) =>
        ProfileJson
            .Instance.Options.GetTypeInfo(record.GetType())
            .Properties.Where(property => property.Get is not null);
}
