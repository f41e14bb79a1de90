using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fuzz;

/// <summary>A FITS file in memory.</summary>
internal sealed class MemorySource(byte[] bytes) : ByteSource
{
    /// <summary>The name that messages must begin with.</summary>
    public const string Name = "fuzzed.fits";

    public override string File => Name;

    public override long MaximumLength => bytes.Length;

    public override long AvailableUpTo(long limit) => Math.Min(bytes.Length, limit);

    public override int Read(long offset, Span<byte> target)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(offset); // as a file would refuse it
        int count = (int)Math.Clamp(bytes.Length - offset, 0, target.Length);
        if (count > 0)
            bytes.AsSpan((int)offset, count).CopyTo(target);
        return count;
    }

    public override void Dispose() { }
}
