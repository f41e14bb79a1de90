namespace SensorProfile.Fits.Bytes;

/// <summary>
/// The bytes of a FITS file at any offset, whether stored plainly on disk or packed. Safe for several threads.
/// </summary>
internal abstract class ByteSource : IDisposable
{
    /// <summary>Path of the file.</summary>
    public abstract string File { get; }

    /// <summary>Upper bound on the number of bytes.</summary>
    public abstract long MaximumLength { get; }

    /// <summary>Fault in the packed data; null while there is none.</summary>
    public virtual FitsFormatException? Damage => null;

    /// <summary>Number of bytes, counted no further than <paramref name="limit"/>.</summary>
    public abstract long AvailableUpTo(long limit);

    /// <summary>Reads up to the length of the span.</summary>
    /// <returns>Number of bytes read; fewer than the span holds only at the end of the file.</returns>
    public abstract int Read(long offset, Span<byte> bytes);

    /// <inheritdoc/>
    public abstract void Dispose();

    /// <summary>Opens a file; gzip is recognised by its magic bytes, whatever the name.</summary>
    public static ByteSource Open(string path) => Unpacked(new FileByteSource(path));

    /// <summary>Reads the content of a file, unpacked if it is an archive.</summary>
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
