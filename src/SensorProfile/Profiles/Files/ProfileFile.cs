using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SensorProfile.Profiles.Files;

/// <summary>Reads and writes <c>profile.json</c>.</summary>
/// <remarks>
/// Readers accept unknown fields and every earlier schema version; a field that an earlier version did not have takes
/// its default. Writing a profile that was read gives the same bytes again.
/// </remarks>
public static class ProfileFile
{
    /// <summary>Reads a profile.</summary>
    /// <param name="path">A <c>profile.json</c> of this or an earlier version of the program.</param>
    /// <exception cref="ProfileFormatException">The file is not JSON, not a profile, or was written by a later
    /// version.</exception>
    /// <exception cref="IOException">The file is missing or cannot be read.</exception>
    public static CameraProfile Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        return Parse(File.ReadAllBytes(path), path);
    }

    /// <summary>Writes a profile: complete or not at all; a file of that name is replaced.</summary>
    /// <param name="path">The final name.</param>
    /// <param name="profile">What was measured; every number in it must be finite.</param>
    /// <exception cref="ArgumentException">A number is NaN or infinite; the message names it. What was not measured is
    /// null.</exception>
    /// <exception cref="IOException">The disk is full, or the folder cannot be written to.</exception>
    public static void Write(string path, CameraProfile profile)
    {
        byte[] json = ToUtf8(profile);
        AtomicFile.Write(path, stream => stream.Write(json));
    }

    /// <summary>The content of <c>profile.json</c>: UTF-8, lines ended by a line feed, the last one too.</summary>
    /// <param name="profile">What was measured; every number in it must be finite.</param>
    /// <exception cref="ArgumentException">A number is NaN or infinite; the message names it.</exception>
    internal static byte[] ToUtf8(CameraProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        FiniteNumbers.Require(profile);
        return [.. JsonSerializer.SerializeToUtf8Bytes(profile, ProfileJson.Instance.CameraProfile), (byte)'\n'];
    }

    /// <summary>Reads a profile from the bytes of a file.</summary>
    /// <param name="utf8">The content.</param>
    /// <param name="file">Its name for messages.</param>
    internal static CameraProfile Parse(ReadOnlySpan<byte> utf8, string file)
    {
        utf8 = JsonText.WithoutMark(utf8);
        JsonObject document = Document(
            utf8,
            file,
            "The file may be cut off; restore it from a copy, or characterise the frames again."
        ) ?? throw NotAProfile(file);
        RequireKnownVersion(document, file);
        try
        {
            ProfileDefaults.Fill(document);
            return document.Deserialize(ProfileJson.Instance.CameraProfile)!;
        }
        catch (JsonException problem)
        {
            throw new ProfileFormatException(
                file,
                problem.Path,
                JsonLine.Find(utf8, problem.Path),
                FirstSentence(problem.Message),
                "Restore the file from a copy, or characterise the frames again.",
                problem
            );
        }
    }

    /// <summary>The object that a JSON file holds; null when it holds something else.</summary>
    /// <param name="utf8">The content, without byte-order mark.</param>
    /// <param name="file">Its name for messages.</param>
    /// <param name="remedy">What to do when it is not JSON.</param>
    /// <exception cref="ProfileFormatException">The file is not JSON, gives a name twice, or holds a number out of
    /// range.</exception>
    internal static JsonObject? Document(ReadOnlySpan<byte> utf8, string file, string remedy)
    {
        if (JsonText.FirstFault(utf8) is { } fault)
            throw new ProfileFormatException(file, fault.Place, fault.Line, fault.Problem, remedy);
        var reader = new Utf8JsonReader(utf8, JsonText.Options);
        using var parsed = JsonDocument.ParseValue(ref reader);
        return parsed.RootElement.ValueKind == JsonValueKind.Object
            ? JsonObject.Create(parsed.RootElement.Clone())
            : null;
    }

    private static void RequireKnownVersion(JsonObject document, string file)
    {
        if (document["schemaVersion"] is not JsonValue value || !value.TryGetValue(out int version) || version < 1)
            throw NotAProfile(file);
        if (version > CameraProfile.CurrentSchemaVersion)
        {
            throw new ProfileFormatException(
                file,
                "$.schemaVersion",
                null,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the profile was written by a later version (schema {version}; this program knows up to "
                        + $"{CameraProfile.CurrentSchemaVersion})."
                ),
                "Read it with that version, or install the newer program."
            );
        }
    }

    private static ProfileFormatException NotAProfile(string file) =>
        new(
            file,
            null,
            null,
            "this is JSON, but no camera profile: it has no schemaVersion.",
            "Give the profile.json that a characterisation wrote."
        );

    /// <summary>
    /// The parser's own message ends in " Path: … | LineNumber: …", which our sentence gives elsewhere.
    /// </summary>
    internal static string FirstSentence(string message)
    {
        int end = message.IndexOf(" Path: ", StringComparison.Ordinal);
        int number = message.IndexOf(" LineNumber: ", StringComparison.Ordinal);
        int cut = end >= 0 ? end : number;
        return cut < 0 ? message : message[..cut];
    }
}
