using SensorProfile.Fits;
using SensorProfile.Frames.Headers;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>A master dark as it stands in its file, whatever program made it.</summary>
/// <param name="File">As given.</param>
/// <param name="Width">px.</param>
/// <param name="Height">px.</param>
/// <param name="Values">Row by row, in the file's own unit.</param>
/// <param name="Exposure">s, as its header states; null when silent.</param>
/// <param name="Temperature">°C, likewise: the reading, else the set point.</param>
/// <param name="Settings">Likewise.</param>
/// <param name="Frames">How many frames were combined, where the header says so.</param>
/// <param name="SaysElectrons">Whether its header gives electrons as the unit.</param>
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
    /// <exception cref="IOException">It cannot be read, or holds no picture of one plane.</exception>
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
