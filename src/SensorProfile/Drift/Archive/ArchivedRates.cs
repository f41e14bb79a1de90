namespace SensorProfile.Drift.Archive;

/// <summary>
/// Dark rates from an archive: hot pixels from their list, all others from the rounded map, whose pixels share one
/// uncertainty.
/// </summary>
/// <param name="map">Rates, e-/px/s; NaN where not measured or flickering.</param>
/// <param name="uncertainty">Standard uncertainty of an ordinary pixel, e-/px/s.</param>
/// <param name="hot">The list of hot pixels.</param>
internal sealed class ArchivedRates(float[] map, double uncertainty, ListedRates hot) : PixelRates
{
    /// <summary>Standard uncertainty of an ordinary pixel, e-/px/s.</summary>
    public double OrdinaryUncertainty => uncertainty;

    /// <summary>The list of hot pixels.</summary>
    public ListedRates Hot => hot;

    /// <inheritdoc/>
    public override bool HoldsOrdinary => true;

    /// <inheritdoc/>
    public override (double Rate, double Uncertainty) At(int index) =>
        hot.Pixels.ContainsKey(index) ? hot.At(index) : (map[index], uncertainty);

    /// <inheritdoc/>
    public override IEnumerable<int> Above(double rate) =>
        rate >= hot.Floor ? hot.Above(rate) : Enumerable.Range(0, map.Length).Where(i => At(i).Rate > rate);

    /// <inheritdoc/>
    public override double Doubling(int index) => hot.Doubling(index);

    /// <inheritdoc/>
    public override bool Flickers(int index) => hot.Flickers(index);

    /// <inheritdoc/>
    public override IEnumerable<int>? Ordinary() => EvenSample(map.Length);
}
