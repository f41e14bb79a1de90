namespace SensorProfile.Fits;

/// <summary>An image kept as compressed tiles in a binary table (FITS 4.0 §10).</summary>
internal static class TileCompressedImage
{
    /// <summary>Makes the HDU.</summary>
    /// <exception cref="FitsFormatException">Always, for now: the way out is to unpack the file first.</exception>
    public static FitsHdu Create(FileScan scan, HduExtent extent, FitsHeader header, HduLayout layout)
        => throw scan.Fault("ZCMPTYPE", header.Card("ZCMPTYPE")?.ByteOffset, $"the image is tile-compressed ({header.Text("ZCMPTYPE") ?? "no ZCMPTYPE"}; BITPIX {layout.Bitpix}, table of {extent.DataBytes} bytes), which this reader does not unpack.",
            "Unpack it with a tool such as funpack, and give the unpacked file.");
}
