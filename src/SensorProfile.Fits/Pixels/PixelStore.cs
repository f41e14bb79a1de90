namespace SensorProfile.Fits.Pixels;

/// <summary>Where the stored numbers of an image come from: plain bytes, or tiles to be unpacked.</summary>
internal abstract class PixelStore
{
    /// <summary>Reads stored numbers in the byte order of this machine.</summary>
    /// <param name="firstPixel">First pixel, counted in file order from 0.</param>
    /// <param name="numbers">Room for a whole number of stored numbers.</param>
    /// <param name="flipTopBit">Whether to flip the top bit of every number, see
    /// <see cref="PixelScaling.FlipsTopBit"/>.</param>
    public abstract void Read(long firstPixel, Span<byte> numbers, bool flipTopBit);
}
