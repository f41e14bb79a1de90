namespace SensorProfile.Fits.Pixels;

/// <summary>Source of an image's stored numbers: plain bytes, or tiles to unpack.</summary>
internal abstract class PixelStore
{
    /// <summary>Reads stored numbers in machine byte order.</summary>
    /// <param name="firstPixel">First pixel, counted in file order from 0.</param>
    /// <param name="numbers">Buffer for a whole number of stored numbers.</param>
    /// <param name="flipTopBit">Whether to flip the top bit of every number, see
    /// <see cref="PixelScaling.FlipsTopBit"/>.</param>
    public abstract void Read(long firstPixel, Span<byte> numbers, bool flipTopBit);
}
