using SensorProfile.Fits;
using SensorProfile.Frames.Headers;
using SensorProfile.Raw;

namespace SensorProfile.Frames.Survey;

/// <summary>The only place in this room that opens files; reads headers only.</summary>
internal static class FrameReader
{
    /// <summary>Result for one file: a frame with its header, or why it was left out.</summary>
    /// <param name="Bare">Path, name, size and HDU; null when the file holds no frame.</param>
    /// <param name="Header">Contents of the header; null when the file holds no frame.</param>
    /// <param name="Reason">Why it was left out; null when it was not.</param>
    /// <param name="IsDamaged">Whether the file could not be read, as opposed to holding no frame.</param>
    /// <param name="Images">Number of images in the file.</param>
    public sealed record Result(Frame? Bare, HeaderReading? Header, string? Reason, bool IsDamaged, int Images)
    {
        /// <summary>The camera's processing of the samples for which the file was left out; otherwise null.</summary>
        public RawTreatmentKind? Treatment { get; init; }

        /// <summary>A readable file that was left out.</summary>
        public static Result Refused(string reason) => new(null, null, reason, false, 0);

        /// <summary>An unreadable file.</summary>
        public static Result Damaged(string reason) => new(null, null, reason, true, 0);
    }

    /// <summary>Reads the headers of one file; never throws because of its contents.</summary>
    public static Result Read(ScannedFile file)
    {
        try
        {
            switch (file.Content)
            {
                case FileContent.Tiff:
                    return RawFrameReader.Read(file);
                case FileContent.MakersRaw:
                    return RawFrameReader.ReadOther(file);
                case FileContent.LayeredRaw:
                    return Result.Refused(
                        "It is a raw file of a sensor that sees three colours in every pixel, which cannot be measured "
                            + "here: leave it out."
                    );
                case FileContent.Jpeg or FileContent.Picture or FileContent.Film:
                    return Result.Refused(
                        $"It is a {FileContents.Word(file.Content)}, whose values the camera has changed: give the raw "
                            + "frame instead."
                    );
                default:
                    using (FitsFile fits = FitsFile.Open(file.Path))
                        return Read(file, fits);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return Result.Damaged(
                problem is FitsFormatException format
                    ? format.Statement
                    : $"It cannot be opened ({problem.Message}); check its permissions and the disk."
            );
        }
    }

    private static Result Read(ScannedFile file, FitsFile fits)
    {
        FitsHdu[] images = [.. fits.Hdus.Where(hdu => hdu.Width > 0 && hdu.Height > 0 && hdu.Axes.Count >= 2)];
        if (fits.FirstImage is not { } image)
            return fits.Errors.Count > 0
                ? Result.Damaged(fits.Errors[0].Statement)
                : Result.Refused("It holds no image.");
        if (image.Axes.Count > 2 && image.Axes.Skip(2).Any(axis => axis > 1))
            return new Result(
                null,
                null,
                $"It holds {image.Axes.Skip(2).Aggregate(1L, (a, b) => a * b)} image planes (a colour picture or a "
                    + "cube), which a raw frame never does.",
                false,
                images.Length
            );
        Frame bare = new()
        {
            Path = file.Path,
            Name = file.Name,
            Width = image.Width,
            Height = image.Height,
            Hdu = image.Index,
            FileBytes = new FileInfo(file.Path).Length,
        };
        // keywords of the primary header also apply to its extensions, unless the extension overrides them
        IEnumerable<FitsCard> cards = image.Index == 0 ? image.Header : image.Header.Concat(fits.Hdus[0].Header);
        KeywordValues values = new(
            cards
                .Where(card => card.Kind != FitsValueKind.Commentary)
                .Select(card => KeyValuePair.Create(card.Keyword, card.Value))
        );
        return new Result(bare, HeaderReading.Read(values, image.Height), null, false, images.Length);
    }
}
