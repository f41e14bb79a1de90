using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace SensorProfile.Reporting.Answers;

/// <summary>
/// Writes records as JSON: names in camelCase, enumeration values in kebab-case, non-finite numbers as null.
/// </summary>
internal static class JsonNodes
{
    internal static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // °C and e⁻ as they are: the document is UTF-8
        NumberHandling = JsonNumberHandling.Strict,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower), new FiniteOrNull() },
    };

    public static JsonNode? Of<T>(T value) => JsonSerializer.SerializeToNode(value, Options);

    public static string Text(JsonNode document) => document.ToJsonString(Options) + "\n";

    private sealed class FiniteOrNull : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value))
                writer.WriteNumberValue(value);
            else
                writer.WriteNullValue();
        }
    }
}
