using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace SensorProfile.Profiles.Files;

/// <summary>
/// The one entry point for all JSON: profiles, thresholds, setups, lists of an archive, cameras to simulate.
/// </summary>
/// <remarks>
/// Whatever the readers behind it would stumble over, or could read in two ways, is found here first and its place
/// named: bytes that are not UTF-8, escapes that are not characters, a name given twice in one object, numbers beyond
/// the range of double precision. Comments and trailing commas pass, because people write some of these files by hand;
/// unknown names pass too, and each reader decides about them.
/// </remarks>
internal static class JsonText
{
    /// <summary>Options shared by all JSON readers.</summary>
    public static readonly JsonReaderOptions Options = new()
    {
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
    };

    /// <summary>The text after the byte-order mark that some editors put in front.</summary>
    public static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> utf8) =>
        utf8.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8;

    /// <summary>The first thing wrong with a text; null when it can be read.</summary>
    /// <param name="utf8">The content of a file, without byte-order mark.</param>
    public static JsonFault? FirstFault(ReadOnlySpan<byte> utf8)
    {
        if (!Utf8.IsValid(utf8))
            return NotUtf8(utf8);
        var reader = new Utf8JsonReader(utf8, Options);
        try
        {
            return Walk(ref reader, utf8);
        }
        catch (JsonException problem)
        {
            return new JsonFault(
                null,
                problem.LineNumber + 1,
                $"this is not JSON: {ProfileFile.FirstSentence(problem.Message)}"
            );
        }
    }

    private static JsonFault? Walk(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8)
    {
        var inside = new Stack<Container>();
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.EndObject or JsonTokenType.EndArray)
            {
                inside.Pop();
                continue;
            }
            if (inside.TryPeek(out Container? parent) && parent.Names is null)
                parent.Index++;
            string? problem = reader.TokenType switch
            {
                JsonTokenType.PropertyName => NameProblem(ref reader, parent!),
                JsonTokenType.String => TextOf(ref reader) is null ? HalfCharacter : null,
                JsonTokenType.Number => IsFinite(ref reader) ? null : TooLarge,
                _ => null,
            };
            if (problem is not null)
                return new JsonFault(Place(inside), LineAt(utf8, (int)reader.TokenStartIndex), problem);
            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
                inside.Push(new Container(reader.TokenType == JsonTokenType.StartObject));
        }
        return null;
    }

    private const string HalfCharacter =
            "the text holds half of a character (an escape such as \\ud800 without its other half).",
        TooLarge = "the number is too large to be one; at most 1.8e308 can be read.";

    private static string? NameProblem(ref Utf8JsonReader reader, Container parent)
    {
        if (TextOf(ref reader) is not { } name)
            return HalfCharacter;
        parent.Name = name;
        return parent.Names!.Add(name) ? null : "this name is given twice; keep the one that is meant.";
    }

    private static string? TextOf(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString();
        }
        catch (InvalidOperationException) // the reader's word for a surrogate without its other half
        {
            return null;
        }
    }

    private static bool IsFinite(ref Utf8JsonReader reader) =>
        reader.TryGetDouble(out double number) && double.IsFinite(number);

    private static string Place(Stack<Container> inside)
    {
        var path = new StringBuilder("$");
        foreach (Container container in inside.Reverse())
        {
            if (container.Names is null)
                path.Append(CultureInfo.InvariantCulture, $"[{container.Index}]");
            else if (container.Name is { } name)
                path.Append('.').Append(name);
        }
        return path.ToString();
    }

    private static JsonFault NotUtf8(ReadOnlySpan<byte> utf8)
    {
        int at = 0;
        while (Rune.DecodeFromUtf8(utf8[at..], out _, out int length) == System.Buffers.OperationStatus.Done)
            at += length;
        return new JsonFault(
            null,
            LineAt(utf8, at),
            string.Create(CultureInfo.InvariantCulture, $"byte {at} (0x{utf8[at]:X2}) is not UTF-8 text.")
        );
    }

    private static long LineAt(ReadOnlySpan<byte> utf8, int index) => 1 + utf8[..index].Count((byte)'\n');

    private sealed class Container(bool isObject)
    {
        public HashSet<string>? Names { get; } = isObject ? new(StringComparer.Ordinal) : null;
        public string? Name { get; set; }
        public int Index { get; set; } = -1;
    }
}
