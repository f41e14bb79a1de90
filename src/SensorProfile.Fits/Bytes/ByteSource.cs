namespace SensorProfile.Fits.Bytes;

/// <summary>
/// The bytes of a FITS file at any offset, whether they lie on disk as they are or have to be unpacked first. Safe for
/// several threads.
/// </summary>
internal abstract class ByteSource : IDisposable
{
    /// <summary>Path of the file.</summary>
    public abstract string File { get; }

    /// <summary>More bytes than this there cannot be.</summary>
    public abstract long MaximumLength { get; }

    /// <summary>What went wrong with the packing; null while all is well.</summary>
    public virtual FitsFormatException? Damage => null;

    /// <summary>How many bytes there are, counted no further than <paramref name="limit"/>.</summary>
    public abstract long AvailableUpTo(long limit);

    /// <summary>Reads as many bytes as there are, at most the length of the span.</summary>
    /// <returns>Number of bytes read; fewer than the span holds only at the end of the file.</returns>
    public abstract int Read(long offset, Span<byte> bytes);

    /// <inheritdoc/>
    public abstract void Dispose();

    /// <summary>Opens a file; gzip is recognised by its magic bytes, whatever the name.</summary>
    public static ByteSource Open(string path) => Unpacked(new FileByteSource(path));

    /// <summary>What a file holds, unpacked where it is an archive.</summary>
    internal static ByteSource Unpacked(ByteSource plain)
    {
        try
        {
            Span<byte> magic = stackalloc byte[2];
            bool gzip = plain.Read(0, magic) == 2 && magic[0] == 0x1F && magic[1] == 0x8B;
            return gzip ? new GzipByteSource(plain) : plain;
        }
        catch
        {
            plain.Dispose();
            throw;
        }
    }
}
