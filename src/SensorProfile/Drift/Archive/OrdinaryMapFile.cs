using System.IO.Compression;
using SensorProfile.Fits;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.Archive;

/// <summary>
/// The rates of all pixels, kept in an archive beside the list of hot ones: <c>ordinary-pixels.fits.gz</c>.
/// </summary>
/// <remarks>
/// float32 in e-/px/s, rounded to a power of two that is at most an eighth of an ordinary pixel's uncertainty (the
/// rounding adds less than 0.1 % to it), so that gzip packs it losslessly to about a byte and a half per pixel. The
/// list holds the exact rates of hot pixels. Any FITS reader opens the file; its header says what it holds.
/// </remarks>
internal static class OrdinaryMapFile
{
    private const string Name = "ordinary-pixels.fits.gz",
        UncertaintyKeyword = "RATEUNC",
        StepKeyword = "RATESTEP",
        VersionKeyword = "MAPVERS";
    private const long Version = 1;
    private const double StepsPerUncertainty = 8;

    /// <summary>Writes the map, unless only the rates of hot pixels are known.</summary>
    /// <param name="folder">Target folder.</param>
    /// <param name="rates">The rates.</param>
    public static void Write(string folder, PixelRates rates)
    {
        if (!rates.HoldsOrdinary || TypicalUncertainty(rates) is not { } uncertainty)
            return;
        double step = Math.Pow(2, Math.Floor(Math.Log2(uncertainty / StepsPerUncertainty)));
        var pixels = new float[rates.Width * rates.Height];
        for (int i = 0; i < pixels.Length; i++)
            pixels[i] = rates.Flickers(i) ? float.NaN : (float)(Math.Round(rates.At(i).Rate / step) * step);
        List<FitsCard> cards =
        [
            FitsCard.Of("BUNIT", "e-/px/s"),
            FitsCard.Of("CONTENT", "Dark rate at REFTEMP, glow included; flickering pixels left out"),
            FitsCard.Of(VersionKeyword, Version, "version of this form"),
            FitsCard.Of(UncertaintyKeyword, uncertainty, "[e-/px/s] standard uncertainty, ordinary pixel"),
            FitsCard.Of(StepKeyword, step, "[e-/px/s] rates are rounded to this"),
        ];
        if (rates.ReferenceTemperature is { } reference)
            cards.Add(FitsCard.Of("REFTEMP", reference, "[degC] temperature the rates hold for"));
        string plain = Path.Combine(folder, $".{Name}.plain");
        try
        {
            FitsWriter.Write(
                plain,
                new FitsImage<float>(rates.Width, rates.Height, pixels, cards),
                overwrite: true,
                durable: false
            );
            AtomicFile.Write(Path.Combine(folder, Name), stream =>
            {
                using FileStream from = File.OpenRead(plain);
                using var packed = new GZipStream(stream, CompressionLevel.SmallestSize, leaveOpen: true);
                from.CopyTo(packed);
            });
        }
        finally
        {
            File.Delete(plain);
        }
    }

    /// <summary>Reads the map; null when there is none.</summary>
    /// <param name="folder">Folder of the archived maps.</param>
    /// <param name="hot">The list beside it, whose size it must match.</param>
    /// <exception cref="IOException">It is damaged, of another sensor, or of a later version; the message names the
    /// file.</exception>
    public static ArchivedRates? Read(string folder, ListedRates hot)
    {
        string file = Path.Combine(folder, Name);
        if (!File.Exists(file))
            return null;
        using FitsFile fits = FitsFile.Open(file);
        FitsHdu image = fits.FirstImage ?? throw new IOException($"{file} holds no image");
        if (image.Header.Integer(VersionKeyword) is > Version)
            throw new IOException($"{file} was written by a later version of this program");
        if (image.Width != hot.Width || image.Height != hot.Height)
            throw new IOException(
                $"{file} is {image.Width} × {image.Height} px, the list of hot pixels beside it {hot.Width} × "
                    + $"{hot.Height} px"
            );
        double uncertainty =
            image.Header.Number(UncertaintyKeyword) is { } u && u > 0
                ? u
                : throw new IOException($"{file} lacks {UncertaintyKeyword}, the uncertainty of its pixels");
        var pixels = new float[checked(image.Width * image.Height)];
        image.ReadRows(0, pixels);
        return new ArchivedRates(pixels, uncertainty, hot)
        {
            Width = hot.Width,
            Height = hot.Height,
            TypicalRate = hot.TypicalRate,
            ReferenceTemperature = hot.ReferenceTemperature,
        };
    }

    private static double? TypicalUncertainty(PixelRates rates)
    {
        // so that writing it again gives the same bytes
        if (rates is ArchivedRates archived)
            return archived.OrdinaryUncertainty;
        double[] all =
        [
            .. rates.Ordinary()!.Select(i => rates.At(i).Uncertainty).Where(u => double.IsFinite(u) && u > 0),
        ];
        return all.Length == 0 ? null : OrderStatistics.Median(all);
    }
}
