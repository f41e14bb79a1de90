using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>The directory of the mosaic and the kind of its file.</summary>
/// <param name="Directory">The directory.</param>
/// <param name="Container">Kind of file.</param>
/// <param name="Version">Version of DNG; null for other files.</param>
/// <param name="HasColourFilter">Whether the samples lie behind a colour filter array.</param>
/// <param name="Exposures">Number of mosaics of this size in the file.</param>
internal sealed record FoundMosaic(
    TiffDirectory Directory,
    RawContainer Container,
    Version? Version,
    bool HasColourFilter,
    int Exposures
);

/// <summary>Finds the full-resolution mosaic among the previews, or says why there is none.</summary>
internal static class MosaicFinder
{
    private const int WhiteIsZero = 0;
    private const int BlackIsZero = 1;
    private const int Rgb = 2;
    private const int YCbCr = 6;
    private const int ColourFilterArray = 32803;
    private const int LinearRaw = 34892;

    /// <summary>Finds the mosaic.</summary>
    /// <param name="file">The file.</param>
    /// <param name="warnings">Receives a warning when there are several.</param>
    /// <exception cref="RawFormatException">There is none.</exception>
    public static FoundMosaic Find(TiffFile file, List<RawWarning> warnings)
    {
        Version? version = VersionOf(file.Directories[0]);
        TiffDirectory[] mosaics = [.. file.Directories.Where(IsMosaic).OrderByDescending(Samples)];
        if (mosaics.Length > 0)
            return new FoundMosaic(
                mosaics[0],
                version is null ? RawContainer.TiffEp : RawContainer.Dng,
                version,
                Photometric(mosaics[0]) == ColourFilterArray,
                Exposures(mosaics, warnings)
            );
        TiffDirectory[] plain = version is null ? [.. file.Directories.Where(IsPlain).OrderByDescending(Samples)] : [];
        return plain.Length == 0
            ? throw Nothing(file)
            : new FoundMosaic(CheckPlain(plain[0]), RawContainer.Tiff, null, false, Exposures(plain, warnings));
    }

    /// <summary>
    /// Counts images as large as the first: several exposures in one file (pixel shift, or a series).
    /// </summary>
    private static int Exposures(TiffDirectory[] images, List<RawWarning> warnings)
    {
        int count = images.Count(image => Samples(image) == Samples(images[0]));
        if (count > 1)
            warnings.Add(
                new RawWarning(
                    RawWarningCodes.SeveralMosaics,
                    new RawLocation(images[0].Source.File),
                    Invariant(
                        $"the file holds {count} mosaics of full resolution (several exposures in one file); the first was taken."
                    )
                )
            );
        return count;
    }

    private static bool IsMosaic(TiffDirectory directory) =>
        IsFullResolution(directory)
        && (
            Photometric(directory) == ColourFilterArray
            || (Photometric(directory) == LinearRaw && SamplesPerPixel(directory) == 1)
        );

    private static bool IsPlain(TiffDirectory directory) =>
        IsFullResolution(directory)
        && Photometric(directory) is WhiteIsZero or BlackIsZero
        && SamplesPerPixel(directory) == 1;

    private static bool IsFullResolution(TiffDirectory directory) =>
        directory.Has(Tag.ImageWidth) && Peek(directory, Tag.NewSubfileType) is null or 0;

    private static long? Photometric(TiffDirectory directory) => Peek(directory, Tag.PhotometricInterpretation);

    private static long SamplesPerPixel(TiffDirectory directory) => Peek(directory, Tag.SamplesPerPixel) ?? 1;

    private static long Samples(TiffDirectory directory) =>
        (Peek(directory, Tag.ImageWidth) ?? 0) * (Peek(directory, Tag.ImageLength) ?? 0);

    /// <summary>A number read while searching directories; its faults surface when it is needed.</summary>
    private static long? Peek(TiffDirectory directory, Tag tag)
    {
        try
        {
            return directory.Integer(tag);
        }
        catch (RawFormatException)
        {
            return null;
        }
    }

    private static Version? VersionOf(TiffDirectory first)
    {
        if (!first.Has(Tag.DNGVersion))
            return null;
        byte[] version = first.Bytes(Tag.DNGVersion, 4);
        if (version.Length != 4 || version[0] != 1)
            throw first.Refuse(
                Tag.DNGVersion,
                RawRefusal.UnknownCoding,
                $"expected DNG 1.0 to 1.7, found version {string.Join('.', version)}.",
                "Convert it to an earlier version of DNG."
            );
        return new Version(version[0], version[1], version[2], version[3]);
    }

    private static TiffDirectory CheckPlain(TiffDirectory plain)
    {
        if (Photometric(plain) == WhiteIsZero)
            throw plain.Refuse(
                Tag.PhotometricInterpretation,
                RawRefusal.UnknownCoding,
                "light is stored as dark (WhiteIsZero).",
                "Save the frame with 0 for dark."
            );
        return plain.Integer(Tag.BitsPerSample) is > 8
            ? plain
            : throw plain.Refuse(
                Tag.BitsPerSample,
                RawRefusal.Lossy,
                Invariant(
                    $"expected 16 bits per sample, found {plain.Integer(Tag.BitsPerSample) ?? 1}: the sensor's codes are not in this file."
                ),
                "Save the frame with 16 bits, or take the raw file."
            );
    }

    private static RawFormatException Nothing(TiffFile file)
    {
        const string take = "Take the raw file from the camera.";
        TiffDirectory first = file.Directories[0];
        TiffDirectory? linear = file.Directories.FirstOrDefault(d =>
            IsFullResolution(d) && Photometric(d) == LinearRaw
        );
        if (linear is not null)
            return linear.Refuse(
                Tag.PhotometricInterpretation,
                RawRefusal.Demosaiced,
                Invariant(
                    $"the samples are demosaiced ({SamplesPerPixel(linear)} colours in every pixel): their noise is not the sensor's."
                ),
                "Convert the original raw file without demosaicing."
            );
        TiffDirectory largest = file.Directories.MaxBy(Samples)!;
        if (Photometric(largest) is Rgb or YCbCr && !first.Has(Tag.MakerNote) && file.Exif?.Has(Tag.MakerNote) != true)
            return largest.Refuse(
                Tag.PhotometricInterpretation,
                RawRefusal.Demosaiced,
                "the file holds a finished picture with three colours in every pixel, no samples of a sensor.",
                take
            );
        return new RawFormatException(
            RawRefusal.NoMosaic,
            new RawLocation(first.Source.File),
            "no directory of the file describes samples of a sensor: it is a picture, or a maker's own raw format.",
            "If it is a raw file, convert it to DNG."
        );
    }
}
