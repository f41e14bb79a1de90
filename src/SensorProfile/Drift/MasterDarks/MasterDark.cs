using SensorProfile.Fits;
using SensorProfile.Frames.Headers;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>A master dark as stored in its file, whatever program made it.</summary>
/// <param name="File">Its path, as given.</param>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px.</param>
/// <param name="Values">Values row by row, in the file's own unit.</param>
/// <param name="Exposure">Exposure from its header, s; null when not stated.</param>
/// <param name="Temperature">Temperature from its header, °C: the reading, or else the set point; null when not
/// stated.</param>
/// <param name="Settings">Settings from its header.</param>
/// <param name="Frames">Number of frames combined, if the header states it.</param>
/// <param name="SaysElectrons">Whether the header gives electrons as the unit.</param>
internal sealed record MasterDark(
    string File,
    int Width,
    int Height,
    float[] Values,
    double? Exposure,
    double? Temperature,
    ModeSettings Settings,
    int? Frames,
    bool SaysElectrons
)
{
    private static readonly string[] CombinedKeywords = ["NCOMBINE", "STACKCNT", "NSTACK"];

    /// <summary>Reads a master.</summary>
    /// <exception cref="IOException">The file cannot be read, or is not an image of one plane.</exception>
    public static MasterDark Read(string path)
    {
        using FitsFile fits = FitsFile.Open(path);
        FitsHdu image = fits.FirstImage
            ?? throw new IOException($"{path} holds no image. Give a master dark in FITS form.");
        if (image.Planes > 1)
            throw new IOException(
                $"{path} holds {image.Planes} image planes; a master dark has one. Export it without colours "
                    + "interpolated."
            );
        var values = new float[checked(image.Width * image.Height)];
        image.ReadRows(0, values);
        IEnumerable<FitsCard> cards = image.Index == 0 ? image.Header : image.Header.Concat(fits.Hdus[0].Header);
        KeywordValues keywords = new(
            cards.Where(c => c.Kind != FitsValueKind.Commentary).Select(c => KeyValuePair.Create(c.Keyword, c.Value))
        );
        HeaderReading header = HeaderReading.Read(keywords, image.Height);
        string? unit = image.Header.Text("BUNIT")?.Trim();
        double? combined = keywords.Number([], null, CombinedKeywords)?.Value;
        return new MasterDark(
            path,
            image.Width,
            image.Height,
            values,
            header.ExposureSeconds,
            header.TemperatureCelsius ?? header.SetTemperatureCelsius,
            header.Settings,
            combined is >= 1 and < 1e6 ? (int)combined.Value : null,
            unit is not null && unit.StartsWith('e')
        );
    }
}
