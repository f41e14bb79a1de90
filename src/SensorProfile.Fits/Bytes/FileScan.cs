namespace SensorProfile.Fits.Bytes;

/// <summary>State of a walk through a file: the current HDU and the warnings so far.</summary>
internal sealed class FileScan(ByteSource source)
{
    /// <summary>The bytes.</summary>
    public ByteSource Source { get; } = source;

    /// <summary>Index of the HDU being read.</summary>
    public int Hdu { get; set; }

    /// <summary>Warnings so far.</summary>
    public List<FitsWarning> Warnings { get; } = [];

    /// <summary>A location in the HDU being read.</summary>
    public FitsLocation At(string? keyword, long? byteOffset) => new(Source.File, Hdu, keyword, byteOffset);

    /// <summary>Adds a warning.</summary>
    public void Warn(string code, string? keyword, long? byteOffset, string message) =>
        Warnings.Add(new FitsWarning(code, At(keyword, byteOffset), message));

    /// <summary>Makes the exception for a fault in the HDU being read.</summary>
    public FitsFormatException Fault(
        string? keyword,
        long? byteOffset,
        string problem,
        string remedy = "Leave the file out, or correct its header."
    ) => new(At(keyword, byteOffset), problem, remedy);

    /// <summary>Makes the exception for a file that ends too early.</summary>
    /// <param name="available">Where the file ends.</param>
    /// <param name="start">Where the truncated part begins.</param>
    /// <param name="needed">Where it should end.</param>
    /// <param name="what">Truncated part, for example "the header".</param>
    /// <param name="keyword">Keyword to name when it is the more likely cause.</param>
    /// <param name="byteOffset">Byte to name; null for the end of the file.</param>
    public FitsFormatException Truncated(
        long available,
        long start,
        long needed,
        string what,
        string? keyword = null,
        long? byteOffset = null
    )
    {
        if (Source.Damage is { } damage)
            return damage;
        bool packed = Source is GzipByteSource;
        long end = Source is GzipByteSource gzip ? gzip.PackedLength : available;
        string stream = packed
            ? $"the gzip archive ends after {available} unpacked bytes, inside {what}"
            : $"the file ends inside {what}";
        return Fault(
            keyword,
            byteOffset ?? end,
            $"{stream}: {needed - available} of {needed - start} bytes are missing.",
            "Copy the file again from its origin, or leave it out."
        );
    }
}
