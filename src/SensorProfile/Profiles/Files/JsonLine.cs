using System.Text.Json;

namespace SensorProfile.Profiles.Files;

/// <summary>Finds the line of a JSON text on which a value stands, so that an error can name it.</summary>
internal static class JsonLine
{
    /// <summary>
    /// Line of the value at a path such as <c>$.modes[0].readNoise</c>, counted from 1; null when the text has no such
    /// value.
    /// </summary>
    /// <param name="utf8">A valid JSON text.</param>
    /// <param name="path">The path; only plain names and indices are understood.</param>
    public static long? Find(ReadOnlySpan<byte> utf8, string? path)
    {
        if (path is null)
            return null;
        var reader = new Utf8JsonReader(utf8, JsonText.Options);
        var places = new Stack<Place>();
        string here = "$";
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.PropertyName)
            {
                here = $"{places.Peek().Path}.{reader.GetString()}";
                continue;
            }
            if (reader.TokenType is JsonTokenType.EndObject or JsonTokenType.EndArray)
            {
                places.Pop();
                continue;
            }
            if (places.TryPeek(out Place? parent) && parent.IsArray)
                here = $"{parent.Path}[{parent.Next++}]";
            if (here == path)
                return 1 + utf8[..(int)reader.TokenStartIndex].Count((byte)'\n');
            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
                places.Push(new Place(here, reader.TokenType == JsonTokenType.StartArray));
        }
        return null;
    }

    private sealed class Place(string path, bool isArray)
    {
        public string Path { get; } = path;
        public bool IsArray { get; } = isArray;
        public int Next { get; set; }
    }
}
