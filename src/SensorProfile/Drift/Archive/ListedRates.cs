namespace SensorProfile.Drift.Archive;

/// <summary>Dark rates of the pixels above a floor; the rest are known only to lie below it.</summary>
internal sealed class ListedRates(double floor, SortedDictionary<int, ListedPixel> pixels) : PixelRates
{
    /// <summary>Every pixel above this rate is in the list, e-/px/s.</summary>
    public double Floor => floor;

    /// <summary>The listed pixels by position.</summary>
    public IReadOnlyDictionary<int, ListedPixel> Pixels => pixels;

    /// <inheritdoc/>
    /// <remarks>
    /// A pixel that is not listed counts as being at the floor: the cautious choice, which never overstates a change.
    /// </remarks>
    public override (double Rate, double Uncertainty) At(int index) =>
        pixels.TryGetValue(index, out ListedPixel pixel) ? (pixel.Rate, pixel.Uncertainty) : (floor, 0);

    /// <inheritdoc/>
    public override IEnumerable<int> Above(double rate) => pixels.Where(p => p.Value.Rate > rate).Select(p => p.Key);

    /// <inheritdoc/>
    public override double Doubling(int index) =>
        pixels.TryGetValue(index, out ListedPixel pixel) ? pixel.Doubling : double.NaN;

    /// <inheritdoc/>
    public override bool Flickers(int index) => pixels.TryGetValue(index, out ListedPixel pixel) && pixel.Flickers;
}
