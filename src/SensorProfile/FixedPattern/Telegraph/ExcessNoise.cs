namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>
/// Noise of a pixel beyond what noise and signal of a sound pixel explain, whether or not its levels can be resolved.
/// </summary>
/// <remarks>
/// Q = Σ(x − mean of the set)²/V over all sets, V the variance that noise and signal of a sound pixel explain; Q/ν is 1
/// for such a pixel, ν = frames − sets. The highest sample is left out, so that a charged-particle hit does not count
/// as noise of the pixel. The excess e = s² − V of each set comes either from a step at readout, the same in every set,
/// or from a dark rate that comes and goes, proportional to (growth·seconds)²: whichever explains more of Σ w·e², w =
/// (ν + ½)/V².
/// </remarks>
/// <param name="Ratio">Q/ν.</param>
/// <param name="Freedom">ν.</param>
/// <param name="Thermal">Whether the scatter grows like dark signal.</param>
/// <param name="Scatter">Standard deviation of the excess: e-, or e-/px/s at the reference temperature.</param>
/// <param name="ScatterUncertainty">Standard uncertainty of that.</param>
internal readonly record struct ExcessNoise(
    double Ratio,
    int Freedom,
    bool Thermal,
    double Scatter,
    double ScatterUncertainty
)
{
    private const int HitsLeftOut = 1;

    /// <summary>ν of a pixel with no missing samples.</summary>
    public static int FreedomOf(IEnumerable<IReadOnlyCollection<object>> sets) =>
        Math.Max(0, sets.Where(s => s.Count > 1).Sum(s => s.Count - 1) - HitsLeftOut);

    /// <summary>Measures a pixel; null with fewer than 3 degrees of freedom.</summary>
    /// <param name="groups">Sets of frames; not changed.</param>
    public static ExcessNoise? Measure(IReadOnlyList<SampleGroup> groups)
    {
        SampleGroup[] all = [.. groups.Where(g => g.Values.Length > 1)];
        if (all.Sum(g => g.Values.Length - 1) < HitsLeftOut + 3)
            return null;
        var highest = new HighestSamples(all);
        for (int hit = 0; hit < HitsLeftOut; hit++)
            all = highest.Removed();
        double q = 0,
            e0 = 0,
            w0 = 0,
            e1 = 0,
            w1 = 0;
        int freedom = 0;
        foreach (SampleGroup group in all)
        {
            double mean = 0,
                squares = 0;
            foreach (double value in group.Values)
                mean += value;
            mean /= group.Values.Length;
            foreach (double value in group.Values)
                squares += (value - mean) * (value - mean);
            int own = group.Values.Length - 1;
            double excess = squares / own - group.Variance,
                weight = own / (group.Variance * group.Variance),
                thermal = group.Thermal * group.Thermal;
            (q, freedom) = (q + squares / group.Variance, freedom + own);
            (e0, w0) = (e0 + weight * excess, w0 + weight);
            (e1, w1) = (e1 + weight * excess * thermal, w1 + weight * thermal * thermal);
        }
        if (freedom < 3)
            return null;
        double readout = e0 > 0 ? e0 * e0 / w0 : 0,
            rate = e1 > 0 && w1 > 0 ? e1 * e1 / w1 : 0;
        bool grows = rate > readout;
        double variance = Math.Max(0, grows ? e1 / w1 : e0 / w0),
            scatter = Math.Sqrt(variance);
        // a variance with ν degrees of freedom has a relative uncertainty of √(2/ν), including its noise
        double ratio = q / freedom;
        return new(
            ratio,
            freedom,
            grows,
            scatter,
            scatter * Math.Sqrt(2.0 / freedom) * ratio / Math.Max(ratio - 1, 0.1) / 2
        );
    }
}
