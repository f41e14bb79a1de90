using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using SensorProfile.NoiseModel;

namespace SensorProfile.Setup;

/// <summary>How a setup looks as JSON: camelCase, indented, fields that are not set left out.</summary>
/// <remarks>
/// A person writes it by hand: comments and trailing commas are accepted, a misspelt or repeated name is not.
/// </remarks>
[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false,
    WriteIndented = true,
    NewLine = "\n",
    AllowTrailingCommas = true,
    ReadCommentHandling = JsonCommentHandling.Skip,
    Converters = [typeof(RejectionConverter)]
)]
[JsonSerializable(typeof(ObservingSetup))]
internal sealed partial class SetupJson : JsonSerializerContext
{
    public static SetupJson Instance => Relaxed.Context;

    /// <summary>A separate type, so that <see cref="Default"/> exists before its options are copied.</summary>
    private static class Relaxed
    {
        internal static readonly SetupJson Context = new(
            new JsonSerializerOptions(Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }
        );
    }

    private sealed class RejectionConverter()
        : JsonStringEnumConverter<Rejection>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false);
}
