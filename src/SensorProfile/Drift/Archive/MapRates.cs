using System.Globalization;
using SensorProfile.Fits;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.Archive;

/// <summary>Dark rates from the full maps that characterise writes.</summary>
internal sealed class MapRates : PixelRates
{
    private static readonly string[] Endings = [".fits", ".fits.gz", ".fits.fz"];

    private readonly float[] rate,
        uncertainty;
    private readonly float[]? doubling;
    private readonly bool[]? flickers;

    private MapRates(float[] rate, float[] uncertainty, float[]? doubling, bool[]? flickers) =>
        (this.rate, this.uncertainty, this.doubling, this.flickers) = (rate, uncertainty, doubling, flickers);

    /// <summary>
    /// Reads <c>dark-rate.fits</c> and the maps beside it, gzipped (<c>.fits.gz</c>) or not; null when there is no
    /// dark-rate map.
    /// </summary>
    /// <param name="folder">Folder with the maps of one mode.</param>
    /// <param name="referenceTemperature">Temperature the rates hold for when the map itself does not state it,
    /// °C.</param>
    /// <exception cref="IOException">A map is damaged, or two maps have different sizes.</exception>
    public static MapRates? Read(string folder, double? referenceTemperature)
    {
        if (Map(folder, "dark-rate") is not { } rate)
            return null;
        if (Map(folder, "dark-rate-uncertainty") is not { } uncertainty)
            throw new IOException(
                $"{Path.Combine(folder, "dark-rate-uncertainty.fits")} is missing; without it a change cannot be "
                    + "told from noise"
            );
        (float[] Pixels, int Width, int Height, FitsHeader Header)? doubling = Map(folder, "doubling"),
            defects = Map(folder, "defects");
        foreach (var other in new[] { uncertainty, doubling, defects })
            if (other is { } map && (map.Width != rate.Width || map.Height != rate.Height))
                throw new IOException(
                    $"the maps in {folder} have different sizes ({rate.Width} × {rate.Height} and {map.Width} × "
                        + $"{map.Height} px)"
                );
        double? reference = rate.Header.Number("REFTEMP") ?? referenceTemperature; // the map's own statement wins
        return Of(
            rate.Width,
            rate.Height,
            reference,
            rate.Pixels,
            uncertainty.Pixels,
            doubling?.Pixels,
            defects is { } d ? Flickering(d.Pixels, d.Header) : null
        );
    }

    /// <summary>Takes maps that are already in memory.</summary>
    public static MapRates Of(
        int width,
        int height,
        double? referenceTemperature,
        float[] rate,
        float[] uncertainty,
        float[]? doubling = null,
        bool[]? flickers = null
    )
    {
        // allocated at its final length: 192 MB for 24 Mpixel, three times that with a growing list
        var measured = new double[rate.Count(float.IsFinite)];
        if (measured.Length == 0)
            throw new IOException("the dark-rate map holds no measured pixel");
        int next = 0;
        foreach (float value in rate)
            if (float.IsFinite(value))
                measured[next++] = value;
        return new MapRates(rate, uncertainty, doubling, flickers)
        {
            Width = width,
            Height = height,
            ReferenceTemperature = referenceTemperature,
            TypicalRate = OrderStatistics.MedianInPlace(measured),
        };
    }

    /// <inheritdoc/>
    public override bool HoldsOrdinary => true;

    /// <inheritdoc/>
    public override (double Rate, double Uncertainty) At(int index) => (rate[index], uncertainty[index]);

    /// <inheritdoc/>
    public override IEnumerable<int> Above(double limit)
    {
        for (int i = 0; i < rate.Length; i++)
            if (rate[i] > limit)
                yield return i;
    }

    /// <inheritdoc/>
    public override double Doubling(int index) => doubling is null ? double.NaN : doubling[index];

    /// <inheritdoc/>
    public override bool Flickers(int index) => flickers is not null && flickers[index];

    /// <inheritdoc/>
    public override IEnumerable<int>? Ordinary() => EvenSample(rate.Length);

    private static (float[] Pixels, int Width, int Height, FitsHeader Header)? Map(string folder, string name)
    {
        string? file = Endings.Select(end => Path.Combine(folder, name + end)).FirstOrDefault(File.Exists);
        if (file is null)
            return null;
        using FitsFile fits = FitsFile.Open(file);
        FitsHdu image = fits.FirstImage ?? throw new IOException($"{file} holds no image");
        var pixels = new float[checked(image.Width * image.Height)];
        image.ReadRows(0, pixels);
        return (pixels, image.Width, image.Height, image.Header);
    }

    /// <summary>
    /// Finds which bit means flickering: the value of the header card that mentions it.
    /// </summary>
    private static bool[]? Flickering(float[] classes, FitsHeader header)
    {
        int bits = 0;
        foreach (FitsCard card in header)
        {
            string words = $"{card.Keyword} {card.Comment}";
            bool speaks =
                words.Contains("flick", StringComparison.OrdinalIgnoreCase)
                || words.Contains("telegraph", StringComparison.OrdinalIgnoreCase);
            if (speaks && int.TryParse(card.Value, NumberStyles.None, CultureInfo.InvariantCulture, out int bit))
                bits |= bit;
        }
        return bits == 0 ? null : [.. classes.Select(c => ((int)c & bits) != 0)];
    }
}
