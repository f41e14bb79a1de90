using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Number of pixels above a dark rate, as a function of the rate.</summary>
internal static class HotPixelCurve
{
    private const double MinSigmas = 5; // below this, the curve would count noise

    /// <summary>
    /// Counts at round rates, from the end of the noise to the brightest pixel. Exact 95 % Poisson intervals (Garwood
    /// 1936).
    /// </summary>
    /// <param name="rates">Rate of each pixel, e-/px/s; NaN is not counted.</param>
    /// <param name="typical">Rate of the typical pixel.</param>
    /// <param name="noise">Uncertainty of the rate of a typical pixel.</param>
    public static IReadOnlyList<HotPixelCount> Count(ReadOnlySpan<float> rates, double typical, double noise)
    {
        float highest = float.NegativeInfinity;
        foreach (float rate in rates)
            if (rate > highest)
                highest = rate;
        double from = Math.Max(typical + MinSigmas * noise, 1e-6);
        double[] thresholds = [.. RoundNumbers.Between(from, Math.Max(highest, from))];
        return Count(rates, thresholds);
    }

    /// <summary>Counts above the given thresholds, ascending.</summary>
    public static IReadOnlyList<HotPixelCount> Count(ReadOnlySpan<float> rates, IReadOnlyList<double> thresholds)
    {
        double[] edges = [.. thresholds];
        long[] between = new long[edges.Length + 1];
        foreach (float rate in rates)
        {
            if (float.IsNaN(rate))
                continue;
            int place = Array.BinarySearch(edges, rate); // a rate equal to a threshold is not above it
            between[place >= 0 ? place : ~place]++;
        }
        var curve = new HotPixelCount[edges.Length];
        long above = 0;
        for (int i = edges.Length - 1; i >= 0; i--)
        {
            above += between[i + 1];
            (double low, double high) = CountIntervals.Poisson(above);
            curve[i] = new(edges[i], above, low, high);
        }
        return curve;
    }
}
