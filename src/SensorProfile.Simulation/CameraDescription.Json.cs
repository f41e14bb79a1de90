using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Simulation;

public sealed partial record CameraDescription
{
    private const string NoFile = "camera description";

    /// <summary>Reads and checks a <c>camera.json</c>.</summary>
    /// <exception cref="CameraDescriptionException">Not JSON, an unknown field, or an invalid value; names the
    /// place.</exception>
    public static CameraDescription Read(string path) =>
        Parse(System.IO.File.ReadAllBytes(path), System.IO.Path.GetFileName(path));

    /// <summary>Parses and checks the text of a <c>camera.json</c>.</summary>
    /// <param name="json">The text.</param>
    /// <param name="file">Name for error messages.</param>
    /// <exception cref="CameraDescriptionException">Not JSON, an unknown field, or an invalid value; names the
    /// place.</exception>
    public static CameraDescription Parse(string json, string file = NoFile)
    {
        ArgumentNullException.ThrowIfNull(json);
        return Parse(Encoding.UTF8.GetBytes(json), file);
    }

    internal static CameraDescription Parse(ReadOnlySpan<byte> utf8, string file)
    {
        utf8 = JsonText.WithoutMark(utf8);
        if (JsonText.FirstFault(utf8) is { } fault)
            throw new CameraDescriptionException(
                file,
                fault.Place ?? "$",
                fault.Line is { } line ? $"{fault.Problem.TrimEnd('.')} (line {line})." : fault.Problem,
                "Correct the text there."
            );
        CameraDescription? camera;
        try
        {
            var reader = new Utf8JsonReader(utf8, JsonText.Options);
            using JsonDocument document = JsonDocument.ParseValue(ref reader);
            JsonNode? complete = Parameters.FieldCheck.Complete(
                document.RootElement,
                SimulationJson.Default.CameraDescription,
                file,
                "$",
                null
            );
            camera = complete.Deserialize(SimulationJson.Default.CameraDescription);
        }
        catch (JsonException error)
        {
            throw new CameraDescriptionException(
                file,
                error.Path ?? "$",
                Reason(error),
                "Correct the value there.",
                error
            );
        }
        if (camera is null)
        {
            throw new CameraDescriptionException(
                file,
                "$",
                "found null instead of a camera.",
                "Describe one, at least its width and height."
            );
        }
        camera.Validate(file);
        return camera;
    }

    /// <summary>The description as indented JSON; reading it back gives an equal camera.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, SimulationJson.Default.CameraDescription);

    /// <summary>Checks every value.</summary>
    /// <param name="file">Name for error messages.</param>
    /// <exception cref="CameraDescriptionException">The first invalid value.</exception>
    public void Validate(string file = NoFile) => new Parameters.ValueCheck(file).Check(this);

    private static string Reason(JsonException error)
    {
        string text = error.Message;
        int end = text.IndexOf(" Path: ", StringComparison.Ordinal);
        text = end < 0 ? text : text[..end];
        string place = error.LineNumber is { } line ? $" (line {line + 1})" : "";
        return text.TrimEnd('.') + place + ".";
    }
}
