using System.Text.Json;
using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Parameters;

/// <summary>Writes enumeration members as lower-case words with hyphens; rejects numbers.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
internal sealed class KebabEnumConverter<T>()
    : JsonStringEnumConverter<T>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
    where T : struct, Enum;
