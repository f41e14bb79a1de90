using SensorProfile.Fitting;

namespace SensorProfile.Drift;

/// <summary>Median and robust standard deviation of a whole map, from the values themselves; what is not a number is left out.</summary>
internal static class RobustSpread
{
    /// <summary>Asymptotic efficiency of the MAD for normal values: the variance it gives has the relative standard error √(2/(0.3675·n)) (Rousseeuw and Croux 1993, JASA 88, 1273).</summary>
    public const double Efficiency = 0.3675;

    /// <summary>The robust standard deviation about the median.</summary>
    public static double Of(ReadOnlySpan<float> map) => OrderStatistics.MadSigma(Finite(map));

    /// <summary>The median.</summary>
    public static double Median(ReadOnlySpan<float> map) => OrderStatistics.Median(Finite(map));

    private static double[] Finite(ReadOnlySpan<float> map)
    {
        var values = new double[map.Length];
        int n = 0;
        foreach (float v in map)
            if (float.IsFinite(v)) values[n++] = v;
        return n == 0 ? throw new IOException("a picture holds no number at all") : values[..n];
    }
}
