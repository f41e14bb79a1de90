namespace SensorProfile.Pixels.Strips;

/// <summary>Bytes of pixel data read, by any thread.</summary>
internal sealed class ReadTally
{
    private long bytes;

    /// <summary>So far.</summary>
    public long Bytes => Interlocked.Read(ref bytes);

    /// <summary>Adds what was read.</summary>
    public void Add(long read) => Interlocked.Add(ref bytes, read);
}
