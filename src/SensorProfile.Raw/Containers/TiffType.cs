namespace SensorProfile.Raw.Containers;

/// <summary>
/// The types of TIFF 6.0, the directory type of its first supplement, and the 64-bit types of BigTIFF.
/// </summary>
internal enum TiffType : ushort
{
    Byte = 1,
    Ascii = 2,
    Short = 3,
    Long = 4,
    Rational = 5,
    SignedByte = 6,
    Undefined = 7,
    SignedShort = 8,
    SignedLong = 9,
    SignedRational = 10,
    Float = 11,
    Double = 12,
    Directory = 13,
    Long8 = 16,
    SignedLong8 = 17,
    Directory8 = 18,
}

/// <summary>One entry of a directory; its values are read on request.</summary>
/// <param name="Tag">The tag.</param>
/// <param name="Type">Type of its values.</param>
/// <param name="Count">Number of its values.</param>
/// <param name="DataOffset">Offset of the first value in the file.</param>
/// <param name="EntryOffset">Offset of the entry in the file.</param>
internal readonly record struct TiffEntry(Tag Tag, TiffType Type, long Count, long DataOffset, long EntryOffset)
{
    /// <summary>Bytes per value; 0 for an unknown type.</summary>
    public int ValueBytes => BytesOf(Type);

    /// <summary>Bytes of all values together.</summary>
    public long DataBytes => ValueBytes * Count;

    /// <summary>Bytes per value of a type; 0 for an unknown type.</summary>
    public static int BytesOf(TiffType type) =>
        type switch
        {
            TiffType.Byte or TiffType.Ascii or TiffType.SignedByte or TiffType.Undefined => 1,
            TiffType.Short or TiffType.SignedShort => 2,
            TiffType.Long or TiffType.SignedLong or TiffType.Float or TiffType.Directory => 4,
            TiffType.Rational or TiffType.SignedRational or TiffType.Double => 8,
            TiffType.Long8 or TiffType.SignedLong8 or TiffType.Directory8 => 8,
            _ => 0,
        };
}
