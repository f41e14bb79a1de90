using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Writing;

/// <summary>Writes mosaics as DNG 1.4.</summary>
public static class DngWriter
{
    /// <summary>Writes a frame; the file appears under its name only when complete.</summary>
    /// <param name="path">Name of the file.</param>
    /// <param name="frame">The frame.</param>
    /// <param name="form">How its samples are stored; null for one strip of 16-bit numbers.</param>
    /// <param name="overwrite">Whether a file of that name may be replaced.</param>
    /// <exception cref="ArgumentException">The frame is inconsistent, or the form does not fit it.</exception>
    /// <exception cref="IOException">The file cannot be written, or its name is taken.</exception>
    public static void Write(string path, DngFrame frame, DngForm? form = null, bool overwrite = false)
    {
        ArgumentNullException.ThrowIfNull(frame);
        form ??= new DngForm();
        Check(frame, form);
        NewDngFile.Write(path, overwrite, stream => Write(stream, frame, form));
    }

    /// <summary>Writes a frame to an empty, seekable stream.</summary>
    internal static void Write(Stream stream, DngFrame frame, DngForm form)
    {
        var file = new TiffBuilder(stream, form.IsBigEndian);
        TiffEntries mosaic = file.NewDirectory();
        SegmentWriter.Write(file, mosaic, frame, form);
        DngTags.AddMosaic(mosaic, frame);
        TiffEntries exif = file.NewDirectory();
        DngTags.AddExif(exif, frame.Facts);
        TiffEntries first = form.HasPreview ? Preview.Directory(file, frame) : mosaic;
        DngTags.AddCamera(first, frame);
        first.Longs(Tag.ExifIFD, file.Append(exif));
        if (form.HasPreview)
            first.Longs(Tag.SubIFDs, file.Append(mosaic));
        file.Finish(file.Append(first));
    }

    private static void Check(DngFrame frame, DngForm form)
    {
        Require(
            frame.Width > 0 && frame.Height > 0 && frame.Samples.Length == (long)frame.Width * frame.Height,
            Invariant($"{frame.Samples.Length} samples do not make {frame.Width} × {frame.Height}."),
            nameof(frame)
        );
        Require(
            frame.BitsPerSample is >= 8 and <= 16,
            Invariant($"A sample has 8 to 16 bits, not {frame.BitsPerSample}."),
            nameof(frame)
        );
        int most = (1 << frame.BitsPerSample) - 1;
        Require(
            !frame.Samples.Span.ContainsAnyExceptInRange((ushort)0, (ushort)most),
            Invariant($"A sample is larger than {most}, the most that {frame.BitsPerSample} bits hold."),
            nameof(frame)
        );
        Require(form.Compression is not RawCompression.Lzw, "DNG has no LZW.", nameof(form));
        Require(
            form.TileSide >= 0 && form.TileSide % 16 == 0,
            Invariant($"The side of a tile is a multiple of 16, not {form.TileSide}."),
            nameof(form)
        );
        Require(
            form.DifferenceDistance is 0 or 1 or 2 or 4,
            Invariant($"A difference goes back 1, 2 or 4 columns, not {form.DifferenceDistance}."),
            nameof(form)
        );
        if (form.Compression == RawCompression.LosslessJpeg)
            CheckJpeg(frame, form);
    }

    private static void CheckJpeg(DngFrame frame, DngForm form)
    {
        int width = form.TileSide > 0 ? form.TileSide : frame.Width;
        int height =
            form.TileSide > 0 ? form.TileSide
            : form.RowsPerStrip > 0 ? form.RowsPerStrip
            : frame.Height;
        Require(
            form.JpegPredictor is >= 1 and <= 7,
            Invariant($"Lossless JPEG has predictors 1 to 7, not {form.JpegPredictor}."),
            nameof(form)
        );
        Require(
            form.JpegComponents is >= 1 and <= 4
                && form.JpegRowsPerLine is 1 or 2
                && width * form.JpegRowsPerLine % form.JpegComponents == 0,
            Invariant(
                $"{form.JpegRowsPerLine} rows of {width} samples do not make a line of {form.JpegComponents} components."
            ),
            nameof(form)
        );
        Require(
            form.JpegRestartLines * (long)(width * form.JpegRowsPerLine / form.JpegComponents)
                is >= 0
                    and <= ushort.MaxValue,
            Invariant($"Restarts after {form.JpegRestartLines} lines are too far apart for lossless JPEG."),
            nameof(form)
        );
        Require(
            height % form.JpegRowsPerLine == 0 && (form.TileSide > 0 || frame.Height % form.JpegRowsPerLine == 0),
            Invariant($"{height} rows do not make lines of {form.JpegRowsPerLine} rows."),
            nameof(form)
        );
    }

    private static void Require(bool holds, string message, string parameter)
    {
        if (!holds)
            throw new ArgumentException(message, parameter);
    }
}
