using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Gain from the fresh darks alone, by the shot noise of their hot pixels.</summary>
/// <remarks>
/// A hot pixel of signal S (ADU above the typical one) has the variance V + S/K in one frame, V that of a typical
/// pixel, K the gain in e⁻/ADU. The half difference d of two means of F/2 frames each has F·d² ~ (V + S/K)·χ²₁, and K
/// is the value at which the median over the hot pixels equals that of χ²₁ (0.4549). The relative uncertainty is
/// 2.33/√n for n pixels; flickering pixels and an unsteady temperature make the gain too small by up to 30 % (seen in
/// the demo), which is added. Rough, but good enough to count a sky (Janesick, Photon Transfer, SPIE Press 2007, for
/// the method with flats).
/// </remarks>
internal static class FreshGain
{
    private const double MedianOfChiSquared = 0.454936423119573,
        RelativeError = 2.33,
        ByFlicker = 0.3;
    private const int MinPixels = 60;
    private const double AboveNoise = 4; // shot noise well above that of a typical pixel, at a gain of 1

    /// <summary>Measures the gain; null with too few hot pixels.</summary>
    public static Measurement? Measure(FreshDarks fresh)
    {
        double typical = RobustSpread.Median(fresh.Mean),
            variance = fresh.TemporalVariance,
            top = 0.5 * fresh.Mean.Max();
        List<(double Signal, double Square)> hot = [];
        for (int i = 0; i < fresh.Mean.Length; i++)
        {
            double signal = fresh.Mean[i] - typical;
            if (signal > AboveNoise * Math.Max(variance, 1) && fresh.Mean[i] < Math.Max(top, typical + 1000))
                hot.Add((signal, fresh.Frames * (double)fresh.HalfDifference[i] * fresh.HalfDifference[i]));
        }
        if (hot.Count < MinPixels)
            return null;
        double low = Math.Log(0.01),
            high = Math.Log(100);
        for (int step = 0; step < 60; step++)
        {
            double middle = (low + high) / 2,
                gain = Math.Exp(middle);
            double median = OrderStatistics.Median([.. hot.Select(p => p.Square / (variance + p.Signal / gain))]);
            // too small a median: the expected noise is too large, so the gain is larger
            (low, high) = median < MedianOfChiSquared ? (middle, high) : (low, middle);
        }
        double found = Math.Exp((low + high) / 2);
        return found is > 0.02 and < 50
            ? new Measurement(
                found,
                found * double.Hypot(RelativeError / Math.Sqrt(hot.Count), ByFlicker),
                "e-/ADU",
                hot.Count,
                "shot noise of hot pixels in the fresh darks"
            )
            : null;
    }
}
