using System.Buffers.Binary;
using System.Text;
using static System.FormattableString;

namespace SensorProfile.Raw.Containers;

/// <summary>An image file directory: its entries, with values read on request.</summary>
internal sealed class TiffDirectory(
    RawBytes source,
    bool bigEndian,
    int index,
    string name,
    Dictionary<Tag, TiffEntry> entries
)
{
    public const string Repair = "Copy the file again from the card, or leave it out.";

    /// <summary>Index in the file's order of directories.</summary>
    public int Index { get; } = index;

    /// <summary>Name used in messages, for example <c>directory 2</c>.</summary>
    public string Name { get; } = name;

    /// <summary>The bytes of the file.</summary>
    public RawBytes Source { get; } = source;

    /// <summary>Whether numbers are stored high byte first.</summary>
    public bool IsBigEndian { get; } = bigEndian;

    /// <summary>Whether the entry exists and has at least one value.</summary>
    public bool Has(Tag tag) => entries.TryGetValue(tag, out TiffEntry entry) && entry.Count > 0;

    /// <summary>The entry; null when there is none.</summary>
    public TiffEntry? Entry(Tag tag) => entries.TryGetValue(tag, out TiffEntry entry) ? entry : null;

    /// <summary>Location of a tag, or of the directory when the tag is missing.</summary>
    public RawLocation Location(Tag tag) => new(Source.File, Name, NameOf(tag), null, Entry(tag)?.EntryOffset);

    /// <summary>Makes an exception for a tag.</summary>
    public RawFormatException Refuse(Tag tag, RawRefusal refusal, string problem, string remedy) =>
        new(refusal, Location(tag), problem, remedy);

    /// <summary>Makes an exception for a tag that violates the format.</summary>
    public RawFormatException Damaged(Tag tag, string problem) => Refuse(tag, RawRefusal.Damaged, problem, Repair);

    /// <summary>The first value as an integer; null when there is no such entry.</summary>
    /// <exception cref="RawFormatException">It is not an integer, or lies outside the file.</exception>
    public long? Integer(Tag tag) => Has(tag) ? Integers(tag, long.MaxValue)[0] : null;

    /// <summary>The first value, which must exist and lie within the limits.</summary>
    /// <exception cref="RawFormatException">It is missing, not an integer, or outside the limits.</exception>
    public int Required(Tag tag, int min, int max)
    {
        long value = Integer(tag) ?? throw Damaged(tag, "the tag is missing.");
        return value >= min && value <= max
            ? (int)value
            : throw Damaged(tag, Invariant($"expected a number from {min} to {max}, found {value}."));
    }

    /// <summary>All values as integers; empty when there is no such entry.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="most">More values than this are refused; with <see cref="long.MaxValue"/> only the first is
    /// read.</param>
    /// <exception cref="RawFormatException">The values are not integers, too many, or outside the file.</exception>
    public long[] Integers(Tag tag, long most)
    {
        if (!Has(tag))
            return [];
        TiffEntry entry = entries[tag];
        byte[] data = Data(entry, most);
        var values = new long[data.Length / entry.ValueBytes];
        for (int i = 0; i < values.Length; i++)
            values[i] = IntegerAt(entry.Type, data.AsSpan(i * entry.ValueBytes))
                ?? throw Damaged(tag, $"expected whole numbers, found values of type {TypeName(entry.Type)}.");
        return values;
    }

    /// <summary>
    /// All values as numbers, with fractions divided out (n/0 is NaN); empty when there is no such entry.
    /// </summary>
    /// <inheritdoc cref="Integers" path="/param"/>
    /// <exception cref="RawFormatException">The values are not numbers, too many, or outside the file.</exception>
    public double[] Numbers(Tag tag, long most)
    {
        if (!Has(tag))
            return [];
        TiffEntry entry = entries[tag];
        byte[] data = Data(entry, most);
        var values = new double[data.Length / entry.ValueBytes];
        for (int i = 0; i < values.Length; i++)
            values[i] = NumberAt(entry.Type, data.AsSpan(i * entry.ValueBytes))
                ?? throw Damaged(tag, $"expected numbers, found values of type {TypeName(entry.Type)}.");
        return values;
    }

    /// <summary>Numerator and denominator of the first value; null when there is no such entry.</summary>
    /// <exception cref="RawFormatException">It is not a fraction, or lies outside the file.</exception>
    public (long Numerator, long Denominator)? Fraction(Tag tag)
    {
        if (!Has(tag))
            return null;
        TiffEntry entry = entries[tag];
        byte[] data = Data(entry, long.MaxValue);
        return entry.Type switch
        {
            TiffType.Rational => (UInt32(data), UInt32(data.AsSpan(4))),
            TiffType.SignedRational => ((int)UInt32(data), (int)UInt32(data.AsSpan(4))),
            _ => (
                IntegerAt(entry.Type, data)
                    ?? throw Damaged(tag, $"expected a fraction, found a value of type {TypeName(entry.Type)}."),
                1
            ),
        };
    }

    /// <summary>Text without surrounding zeros and blanks; null when there is none.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="most">More characters than this are refused.</param>
    /// <exception cref="RawFormatException">It is not text, too long, or outside the file.</exception>
    public string? Text(Tag tag, int most = 4096)
    {
        if (!Has(tag))
            return null;
        TiffEntry entry = entries[tag];
        if (entry.ValueBytes != 1)
            throw Damaged(tag, $"expected text, found values of type {TypeName(entry.Type)}.");
        ReadOnlySpan<byte> data = Data(entry, most);
        int end = data.IndexOf((byte)0);
        string text = Encoding.UTF8.GetString(end < 0 ? data : data[..end]).Trim();
        return text.Length > 0 ? text : null;
    }

    /// <summary>The bytes of a byte entry; empty when there is none.</summary>
    /// <inheritdoc cref="Text" path="/param"/>
    /// <exception cref="RawFormatException">The values are not single bytes, too many, or outside the file.</exception>
    public byte[] Bytes(Tag tag, int most)
    {
        if (!Has(tag))
            return [];
        TiffEntry entry = entries[tag];
        return entry.ValueBytes == 1
            ? Data(entry, most)
            : throw Damaged(tag, $"expected bytes, found values of type {TypeName(entry.Type)}.");
    }

    /// <summary>Name and number of a tag, for example <c>StripOffsets (273)</c>.</summary>
    public static string NameOf(Tag tag) => Invariant($"{tag} ({(ushort)tag})");

    private byte[] Data(TiffEntry entry, long most)
    {
        if (entry.ValueBytes == 0)
            throw Damaged(entry.Tag, Invariant($"the type {(ushort)entry.Type} does not exist."));
        if (most != long.MaxValue && entry.Count > most)
            throw Damaged(entry.Tag, Invariant($"expected at most {most} values, found {entry.Count}."));
        long bytes = most == long.MaxValue ? entry.ValueBytes : entry.DataBytes;
        long end = entry.DataOffset + bytes;
        if (end > Source.Length)
            throw Damaged(
                entry.Tag,
                Invariant(
                    $"its values stand at bytes {entry.DataOffset} to {end - 1}, but the file ends after {Source.Length} bytes."
                )
            );
        var data = new byte[bytes];
        return Source.Read(entry.DataOffset, data) == data.Length
            ? data
            : throw Damaged(entry.Tag, "the file ends within its values.");
    }

    private long? IntegerAt(TiffType type, ReadOnlySpan<byte> at) =>
        type switch
        {
            TiffType.Byte or TiffType.Undefined => at[0],
            TiffType.SignedByte => (sbyte)at[0],
            TiffType.Short => UInt16(at),
            TiffType.SignedShort => (short)UInt16(at),
            TiffType.Long or TiffType.Directory => UInt32(at),
            TiffType.SignedLong => (int)UInt32(at),
            TiffType.Long8 or TiffType.Directory8 => TiffForm.Unsigned(at[..8], IsBigEndian),
            TiffType.SignedLong8 => TiffForm.Int64(at, IsBigEndian),
            _ => null,
        };

    private double? NumberAt(TiffType type, ReadOnlySpan<byte> at) =>
        type switch
        {
            TiffType.Rational => Divide(UInt32(at), UInt32(at[4..])),
            TiffType.SignedRational => Divide((int)UInt32(at), (int)UInt32(at[4..])),
            TiffType.Float => BitConverter.UInt32BitsToSingle(UInt32(at)),
            TiffType.Double => IsBigEndian
                ? BinaryPrimitives.ReadDoubleBigEndian(at)
                : BinaryPrimitives.ReadDoubleLittleEndian(at),
            _ => IntegerAt(type, at),
        };

    private static double Divide(double numerator, double denominator) =>
        denominator == 0 ? double.NaN : numerator / denominator;

    private ushort UInt16(ReadOnlySpan<byte> at) =>
        IsBigEndian ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);

    private uint UInt32(ReadOnlySpan<byte> at) =>
        IsBigEndian ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);

    private static string TypeName(TiffType type) => type.ToString().ToUpperInvariant();
}
