using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits;

/// <summary>Position of an HDU in its file.</summary>
/// <param name="Source">The bytes.</param>
/// <param name="Location">File and HDU.</param>
/// <param name="HeaderStart">First byte of the header.</param>
/// <param name="DataStart">First byte of the data unit.</param>
/// <param name="DataBytes">Length of the data unit without padding.</param>
internal sealed record HduExtent(
    ByteSource Source,
    FitsLocation Location,
    long HeaderStart,
    long DataStart,
    long DataBytes
)
{
    /// <summary>First byte after the data unit and its padding.</summary>
    public long End =>
        DataStart + ((DataBytes + HeaderReader.BlockBytes - 1) / HeaderReader.BlockBytes * HeaderReader.BlockBytes);
}
