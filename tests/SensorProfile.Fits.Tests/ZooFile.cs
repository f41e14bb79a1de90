using System.Text.Json;

namespace SensorProfile.Fits.Tests;

/// <summary>One entry of expected.json.</summary>
internal sealed class ZooFile(JsonElement entry)
{
    private static readonly Lazy<IReadOnlyDictionary<string, ZooFile>> All = new(Load);

    public static IReadOnlyDictionary<string, ZooFile> Files => All.Value;

    public string Class => entry.GetProperty("class").GetString()!;

    public IReadOnlyList<JsonElement> Hdus =>
        entry.TryGetProperty("hdus", out var hdus) ? [.. hdus.EnumerateArray()] : [];

    public IReadOnlyDictionary<string, JsonElement> Keywords =>
        entry.TryGetProperty("keywords", out var keywords)
            ? keywords.EnumerateObject().ToDictionary(p => p.Name, p => p.Value)
            : new Dictionary<string, JsonElement>();

    public string? ErrorKind => Error("kind")?.GetString();

    public string? ErrorCard => Error("card")?.GetString();

    public int? ErrorHdu => Error("hdu")?.GetInt32();

    public long? ErrorOffset => Error("offset")?.GetInt64();

    private JsonElement? Error(string name) =>
        entry.TryGetProperty("error", out var error)
        && error.ValueKind == JsonValueKind.Object
        && error.TryGetProperty(name, out var value)
        && value.ValueKind != JsonValueKind.Null
            ? value
            : null;

    public static string Path(string file) => TestData.Path("fits-zoo/" + file);

    private static Dictionary<string, ZooFile> Load()
    {
        using var stream = File.OpenRead(Path("expected.json"));
        using var document = JsonDocument.Parse(stream);
        return document
            .RootElement.GetProperty("files")
            .EnumerateObject()
            .ToDictionary(p => p.Name, p => new ZooFile(p.Value.Clone()));
    }
}
