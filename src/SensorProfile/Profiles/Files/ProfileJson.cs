using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Profiles.Files;

/// <summary>
/// How a profile looks as JSON: camelCase, enumerations as lower-case words, indented, null where nothing was measured.
/// </summary>
[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    WriteIndented = true,
    NewLine = "\n",
    AllowTrailingCommas = true,
    ReadCommentHandling = JsonCommentHandling.Skip,
    Converters = [
        typeof(WordConverter<Severity>),
        typeof(WordConverter<ClassRefusal>),
        typeof(WordConverter<PatternDirection>),
        typeof(WordConverter<LineDirection>),
        typeof(WordConverter<PatternKind>),
        typeof(WordConverter<GainForm>),
        typeof(WordConverter<SaturationCause>),
        typeof(WordConverter<DarkForm>),
    ]
)]
[JsonSerializable(typeof(CameraProfile))]
internal sealed partial class ProfileJson : JsonSerializerContext
{
    /// <summary>
    /// The context that reads and writes profiles; "°" and "µ" are written literally, since the file is never put into
    /// a web page unescaped.
    /// </summary>
    public static ProfileJson Instance => Relaxed.Context;

    /// <summary>A separate type, so that <see cref="Default"/> exists before its options are copied.</summary>
    private static class Relaxed
    {
        internal static readonly ProfileJson Context = new(
            new JsonSerializerOptions(Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }
        );
    }

    private sealed class WordConverter<T>()
        : JsonStringEnumConverter<T>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
        where T : struct, Enum;
}
