namespace SensorProfile.Pixels.Strips;

/// <summary>Counts the bytes of pixel data read by all threads.</summary>
internal sealed class ReadByteCounter
{
    private long bytes;

    /// <summary>Bytes read so far.</summary>
    public long Bytes => Interlocked.Read(ref bytes);

    /// <summary>Adds bytes that were read.</summary>
    public void Add(long read) => Interlocked.Add(ref bytes, read);
}
