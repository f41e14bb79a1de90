using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Pixels;
using SensorProfile.Fits.Tiles;

namespace SensorProfile.Fits;

/// <summary>Makes the HDU object that matches a header.</summary>
internal static class HduFactory
{
    /// <summary>Makes the HDU object.</summary>
    /// <exception cref="FitsFormatException">The HDU is complete in the file, but its content cannot be
    /// used.</exception>
    public static FitsHdu Create(FileScan scan, HduExtent extent, FitsHeader header, HduLayout layout)
    {
        if (layout.Kind == FitsHduKind.Table && header.Logical("ZIMAGE") == true)
            return TileCompressedImage.Create(scan, extent, header, layout);
        if (layout.Kind != FitsHduKind.Image)
            return new FitsHdu(extent, header, layout.Kind, layout.Bitpix, layout.Axes, null, null);
        CheckAxes(scan, header, "NAXIS", layout.Axes);
        PixelScaling scaling = PixelScaling.Read(scan, header, layout.Bitpix);
        var store = new PlainPixelStore(extent.Source, extent.Location, extent.DataStart, scaling.ElementBytes);
        return new FitsHdu(extent, header, FitsHduKind.Image, layout.Bitpix, layout.Axes, scaling, store);
    }

    /// <summary>Rows, columns and planes must fit into 32 bits.</summary>
    internal static void CheckAxes(FileScan scan, FitsHeader header, string keyword, ReadOnlySpan<long> axes)
    {
        long planes = 1;
        for (int i = 0; i < axes.Length; i++)
        {
            if (i >= 2)
                planes *= Math.Min(axes[i], int.MaxValue);
            if (axes[i] > int.MaxValue || planes > int.MaxValue)
                throw scan.Fault(
                    $"{keyword}{i + 1}",
                    header.Card($"{keyword}{i + 1}")?.ByteOffset,
                    $"an axis of {axes[i]} exceeds this reader's limit ({int.MaxValue})."
                );
        }
    }
}
