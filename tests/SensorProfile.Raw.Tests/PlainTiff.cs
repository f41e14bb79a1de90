using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests;

/// <summary>Plain TIFF files in memory, written by LibTiff.NET.</summary>
internal static class PlainTiff
{
    public static byte[] Bytes(DngFrame frame, Compression compression)
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("frame.tif");
        using (Tiff tiff = Tiff.Open(path, "w"))
        {
            tiff.SetField(TiffTag.IMAGEWIDTH, frame.Width);
            tiff.SetField(TiffTag.IMAGELENGTH, frame.Height);
            tiff.SetField(TiffTag.BITSPERSAMPLE, 16);
            tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
            tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
            tiff.SetField(TiffTag.COMPRESSION, compression);
            tiff.SetField(TiffTag.ROWSPERSTRIP, 20);
            for (int row = 0; row < frame.Height; row++)
                tiff.WriteScanline(
                    MemoryMarshal.AsBytes(frame.Samples.Span.Slice(row * frame.Width, frame.Width)).ToArray(),
                    row
                );
        }
        return File.ReadAllBytes(path);
    }
}
