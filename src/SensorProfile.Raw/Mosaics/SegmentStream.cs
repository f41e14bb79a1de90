namespace SensorProfile.Raw.Mosaics;

/// <summary>The bytes of a strip or tile as a forward-only stream.</summary>
internal sealed class SegmentStream(SegmentBytes bytes) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        if (bytes.Window.IsEmpty)
            bytes.Fill();
        ReadOnlySpan<byte> window = bytes.Window;
        int count = Math.Min(window.Length, buffer.Length);
        window[..count].CopyTo(buffer);
        bytes.Advance(count);
        return count;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
