using System.Globalization;

namespace SensorProfile.Raw;

/// <summary>A place in a raw file, as precise as known.</summary>
/// <param name="File">Path of the file.</param>
/// <param name="Directory">The image file directory, for example <c>directory 0</c>; null for the file as a
/// whole.</param>
/// <param name="Tag">Name and number of the tag, for example <c>StripOffsets (273)</c>; null for none.</param>
/// <param name="Segment">The strip or tile, for example <c>strip 3</c>, counted from 0; null for none.</param>
/// <param name="ByteOffset">Offset in the file; null when unknown.</param>
public sealed record RawLocation(
    string File,
    string? Directory = null,
    string? Tag = null,
    string? Segment = null,
    long? ByteOffset = null
)
{
    /// <summary>
    /// For example <c>dark_0012.dng, directory 0, tag StripOffsets (273), byte 114</c>; without the folder.
    /// </summary>
    public override string ToString() => string.Join(", ", [Path.GetFileName(File), .. Parts()]);

    /// <summary>
    /// For example <c>directory 0, tag StripOffsets (273), byte 114</c>; empty for the file as a whole.
    /// </summary>
    internal string WithinFile => string.Join(", ", Parts());

    private IEnumerable<string> Parts()
    {
        if (Directory is not null)
            yield return Directory;
        if (Tag is not null)
            yield return "tag " + Tag;
        if (Segment is not null)
            yield return Segment;
        if (ByteOffset is { } offset)
            yield return string.Create(CultureInfo.InvariantCulture, $"byte {offset}");
    }
}
