using SensorProfile.Frames.Headers;
using SensorProfile.Raw;
using SensorProfile.Raw.LibRaw;

namespace SensorProfile.Frames.Survey;

/// <summary>Reads what a raw file states about its frame, without reading samples.</summary>
internal static class RawFrameReader
{
    private const string Empty = "the file is empty. Copy it again from the card, or leave it out.";

    /// <summary>The frame of a DNG, TIFF/EP or TIFF mosaic, or why the file cannot be used.</summary>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    public static FrameReader.Result Read(ScannedFile file)
    {
        if (new FileInfo(file.Path).Length == 0)
            return FrameReader.Result.Damaged(Empty);
        try
        {
            using RawFile raw = RawFile.Open(file.Path);
            (RawFacts facts, RawMosaic mosaic) = (raw.Facts, raw.Mosaic);
            return ResultOf(
                facts,
                BareOf(file, FrameFormat.Raw, mosaic),
                RawHeader.Read(facts, mosaic.ColourFilter?.Name, mosaic.Linearisation),
                raw.Storage.Exposures
            );
        }
        catch (RawFormatException format)
        {
            if (FileNames.IsMakersTiff(file.Path))
                return ReadOther(file);
            return ResultOf(format);
        }
    }

    /// <summary>The frame of a raw file in its maker's own format, or why the file cannot be used.</summary>
    public static FrameReader.Result ReadOther(ScannedFile file)
    {
        if (new FileInfo(file.Path).Length == 0)
            return FrameReader.Result.Damaged(Empty);
        try
        {
            LibRawFrame raw = LibRawDecoder.Describe(file.Path);
            return ResultOf(
                raw.Facts,
                BareOf(file, FrameFormat.OtherRaw, raw.Mosaic),
                RawHeader.Read(raw.Facts, raw.Mosaic.ColourFilter?.Name, null),
                raw.Exposures
            );
        }
        catch (RawFormatException format)
        {
            return ResultOf(format);
        }
    }

    private static FrameReader.Result ResultOf(RawFormatException format) =>
        format.Refusal is RawRefusal.Damaged or RawRefusal.TooLarge
            ? FrameReader.Result.Damaged(format.Statement)
            : FrameReader.Result.Refused(format.Statement);

    private static FrameReader.Result ResultOf(RawFacts facts, Frame bare, HeaderReading header, int exposures) =>
        RawTreatments.Refusing(facts) is { } treatment
            ? FrameReader.Result.Refused(RawTreatments.Reason(treatment)) with
            {
                Treatment = treatment.Kind,
            }
            : new FrameReader.Result(bare, header, null, false, exposures);

    private static Frame BareOf(ScannedFile file, FrameFormat format, RawMosaic mosaic) =>
        new()
        {
            Path = file.Path,
            Name = file.Name,
            Format = format,
            Width = mosaic.Width,
            Height = mosaic.Height,
            Sensor = SensorArea.Of(mosaic),
            FileBytes = new FileInfo(file.Path).Length,
        };
}
