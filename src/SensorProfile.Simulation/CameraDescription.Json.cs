using System.Text.Json;
using System.Text.Json.Nodes;

namespace SensorProfile.Simulation;

public sealed partial record CameraDescription
{
    private const string NoFile = "camera description";

    /// <summary>Reads and checks a <c>camera.json</c>.</summary>
    /// <exception cref="CameraDescriptionException">Not JSON, an unknown field, or a value that makes no camera; names
    /// the place.</exception>
    public static CameraDescription Read(string path) =>
        Parse(System.IO.File.ReadAllText(path), System.IO.Path.GetFileName(path));

    /// <summary>Reads and checks the text of a <c>camera.json</c>.</summary>
    /// <param name="json">The text.</param>
    /// <param name="file">Name for error messages.</param>
    /// <exception cref="CameraDescriptionException">Not JSON, an unknown field, or a value that makes no camera; names
    /// the place.</exception>
    public static CameraDescription Parse(string json, string file = NoFile)
    {
        CameraDescription? camera;
        try
        {
            var options = new JsonDocumentOptions
            {
                CommentHandling = JsonCommentHandling.Skip,
                AllowTrailingCommas = true,
            };
            using JsonDocument document = JsonDocument.Parse(json, options);
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
    /// <exception cref="CameraDescriptionException">The first value that makes no camera.</exception>
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
