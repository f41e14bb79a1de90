using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Pixels;

/// <summary>Pixels stored as plain big-endian numbers in the data unit.</summary>
internal sealed class PlainPixelStore(ByteSource source, FitsLocation location, long dataStart, int elementBytes)
    : PixelStore
{
    private const int StepBytes = 1 << 18; // byte-swapped while still in the second-level cache

    public override void Read(long firstPixel, Span<byte> numbers, bool flipTopBit)
    {
        long offset = dataStart + (firstPixel * elementBytes);
        while (numbers.Length > 0)
        {
            Span<byte> step = numbers[..Math.Min(StepBytes, numbers.Length)];
            int read = source.Read(offset, step);
            if (read < step.Length)
            {
                throw source.Damage
                    ?? new FitsFormatException(
                        location with
                        {
                            ByteOffset = offset + read,
                        },
                        $"the file has become shorter since it was opened: {step.Length - read} bytes are missing "
                            + "here.",
                        "Copy the file again from its origin, or leave it out."
                    );
            }

            ByteOrder.FromBigEndian(step, elementBytes, flipTopBit);
            offset += step.Length;
            numbers = numbers[step.Length..];
        }
    }
}
