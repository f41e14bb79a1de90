using System.Text.Json;
using System.Text.Json.Serialization;

namespace SensorProfile;

/// <summary>What a code of a finding or of a refusal means.</summary>
/// <param name="Code">Stable kebab-case code, as in <see cref="Finding.Code"/>.</param>
/// <param name="Meaning">What was found.</param>
/// <param name="Cause">The usual cause.</param>
/// <param name="Cure">What to do about it.</param>
internal sealed record FindingCode(string Code, string Meaning, string Cause, string Cure);

/// <summary>The catalogue of all codes that findings and refusals carry (<c>findings.json</c>).</summary>
/// <remarks>A code is never renamed nor given another meaning: scripts rely on it.</remarks>
internal static partial class FindingCodes
{
    private static readonly Lazy<IReadOnlyDictionary<string, FindingCode>> byCode = new(Read);

    /// <summary>All codes, in alphabetical order.</summary>
    public static IReadOnlyList<FindingCode> All { get; } =
    [.. byCode.Value.Values.OrderBy(c => c.Code, StringComparer.Ordinal)];

    /// <summary>The entry of a code; null when it is not in the catalogue.</summary>
    /// <param name="code">Kebab-case code.</param>
    public static FindingCode? Find(string code) => byCode.Value.GetValueOrDefault(code);

    private static Dictionary<string, FindingCode> Read()
    {
        using Stream stream = typeof(FindingCodes).Assembly.GetManifestResourceStream("SensorProfile.findings.json")!;
        return JsonSerializer
            .Deserialize(stream, CatalogueJson.Default.DictionaryStringEntry)!
            .ToDictionary(
                e => e.Key,
                e => new FindingCode(e.Key, e.Value.Meaning, e.Value.Cause, e.Value.Cure),
                StringComparer.Ordinal
            );
    }

    internal sealed record Entry(string Meaning, string Cause, string Cure);

    [JsonSourceGenerationOptions(
        PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true
    )]
    [JsonSerializable(typeof(Dictionary<string, Entry>))]
    internal sealed partial class CatalogueJson : JsonSerializerContext;
}
