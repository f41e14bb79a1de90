using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Setup;

/// <summary>Reads and writes <c>setup.json</c>.</summary>
internal static class SetupFile
{
    /// <summary>Default name of a setup file.</summary>
    public const string Name = "setup.json";

    /// <summary>Reads a setup; its relative paths become paths from the file's own folder.</summary>
    /// <exception cref="SetupFormatException">The file is not JSON, names a field that no setup has, or holds a value
    /// that makes no sense.</exception>
    /// <exception cref="IOException">The file is missing or cannot be read.</exception>
    public static ObservingSetup Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ObservingSetup setup = Parse(File.ReadAllBytes(path), path);
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        string? From(string? relative) => relative is null ? null : Path.Combine(folder, relative);
        return setup with
        {
            Camera = setup.Camera is { } camera ? camera with { Profile = From(camera.Profile) } : null,
            Sky = setup.Sky is { } sky ? sky with { Lights = From(sky.Lights) } : null,
            Cooling = setup.Cooling is { } cooling ? cooling with { Nights = From(cooling.Nights) } : null,
        };
    }

    /// <summary>Writes a setup: complete or not at all; a file of that name is replaced.</summary>
    /// <exception cref="SetupFormatException">A value makes no sense; the message names it.</exception>
    /// <exception cref="IOException">The disk is full, or the folder cannot be written to.</exception>
    public static void Write(string path, ObservingSetup setup)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(setup);
        if (SetupCheck.FirstProblem(setup) is { } found)
            throw new SetupFormatException(path, null, found.Place, found.Problem);
        byte[] json = ToUtf8(setup);
        AtomicFile.Write(path, stream => stream.Write(json));
    }

    /// <summary>The JSON Schema (draft 2020-12) of <c>setup.json</c>, made from the records themselves.</summary>
    public static string Schema()
    {
        var schema = SetupJson.Instance.Options.GetJsonSchemaAsNode(
            typeof(ObservingSetup),
            new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true }
        );
        var document = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = "urn:sensorprofile:setup:1",
            ["title"] = "Observing setup",
        };
        foreach ((string name, JsonNode? value) in schema.AsObject())
            document[name] = value?.DeepClone();
        return document.ToJsonString(SetupJson.Instance.Options) + "\n";
    }

    internal static ObservingSetup Parse(ReadOnlySpan<byte> utf8, string file)
    {
        utf8 = JsonText.WithoutMark(utf8);
        if (JsonText.FirstFault(utf8) is { } fault)
            throw new SetupFormatException(
                file,
                fault.Line,
                Field(fault.Place),
                fault.Place is null ? $"{fault.Problem} {Example}" : fault.Problem
            );
        ObservingSetup setup;
        try
        {
            setup = JsonSerializer.Deserialize(utf8, SetupJson.Instance.ObservingSetup)
                ?? throw new SetupFormatException(file, null, null, Example);
        }
        catch (JsonException problem)
        {
            string? place = Field(problem.Path);
            throw new SetupFormatException(file, problem.LineNumber + 1, place, Explain(problem), problem);
        }
        return SetupCheck.FirstProblem(setup) is { } found
            ? throw new SetupFormatException(file, JsonLine.Find(utf8, "$." + found.Place), found.Place, found.Problem)
            : setup;
    }

    private const string Example = """expected a setup such as { "stack": { "exposure": 300, "lights": 40 } }.""";

    internal static byte[] ToUtf8(ObservingSetup setup) =>
        [.. JsonSerializer.SerializeToUtf8Bytes(setup, SetupJson.Instance.ObservingSetup), (byte)'\n'];

    private static string? Field(string? path) =>
        path is null or "$" ? null
        : path.StartsWith("$.", StringComparison.Ordinal) ? path[2..]
        : path;

    /// <summary>
    /// For a misspelt name, lists the fields there are; for a value of another kind, says what is expected.
    /// </summary>
    private static string Explain(JsonException problem)
    {
        if (problem.Path is not { } path || path == "$")
            return Example;
        string owner = path.LastIndexOf('.') is > 0 and int dot ? path[..dot] : "$";
        string name = path[(path.LastIndexOf('.') + 1)..];
        JsonPropertyInfo[] known = [.. FieldsAt(owner)];
        return known.FirstOrDefault(p => p.Name == name) is { } field ? $"expected {Expected(field.PropertyType)}."
            : known.Length > 0
                ? $"there is no such field; the fields here are {string.Join(", ", known.Select(p => p.Name))}."
            : "the value is not of the kind expected here.";
    }

    private static string Expected(Type type) =>
        (Nullable.GetUnderlyingType(type) ?? type) switch
        {
            { IsEnum: true } words => string.Join(
                ", ",
                Enum.GetNames(words).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)
            ),
            var t when t == typeof(double) => "a number",
            var t when t == typeof(int) => "a whole number",
            var t when t == typeof(bool) => "true or false",
            var t when t == typeof(string) => "a text in quotation marks",
            _ => "a group of fields in braces",
        };

    private static IEnumerable<JsonPropertyInfo> FieldsAt(string owner)
    {
        JsonTypeInfo here = SetupJson.Instance.ObservingSetup;
        foreach (string part in owner.Split('.').Skip(1))
        {
            string name = part.Split('[')[0];
            if (here.Properties.FirstOrDefault(p => p.Name == name) is not { } property)
                return [];
            here = SetupJson.Instance.Options.GetTypeInfo(property.PropertyType);
            if (here.ElementType is { } element)
                here = SetupJson.Instance.Options.GetTypeInfo(element);
        }
        return here.Properties;
    }
}
