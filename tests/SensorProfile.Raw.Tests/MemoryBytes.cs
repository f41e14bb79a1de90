using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Tests;

/// <summary>A file that is not on disk.</summary>
internal sealed class MemoryBytes(byte[] bytes, string name = "test.dng") : RawBytes
{
    public override string File => name;

    public override long Length => bytes.Length;

    public override int Read(long offset, Span<byte> target)
    {
        int count = (int)Math.Clamp(bytes.Length - offset, 0, target.Length);
        if (count > 0)
            bytes.AsSpan((int)offset, count).CopyTo(target);
        return count;
    }
}
