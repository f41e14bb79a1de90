namespace SensorProfile.Raw.Containers;

/// <summary>The bytes of a file at any offset.</summary>
internal abstract class RawBytes : IDisposable
{
    /// <summary>Path of the file.</summary>
    public abstract string File { get; }

    /// <summary>Length of the file, bytes.</summary>
    public abstract long Length { get; }

    /// <summary>Reads up to the length of the span.</summary>
    /// <returns>Number of bytes read; fewer than the span holds only at the end of the file.</returns>
    public abstract int Read(long offset, Span<byte> bytes);

    /// <summary>Releases the system's resources for the file until the next read.</summary>
    public virtual void Park() { }

    /// <inheritdoc/>
    public virtual void Dispose() => Park();
}
