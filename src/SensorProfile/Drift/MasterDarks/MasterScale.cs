using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>How a master's values relate to the fresh darks: fresh = offset + scale·master (+ bias pattern).</summary>
/// <remarks>
/// The hot pixels give the slope b of fresh against master. Where the two levels have the same ratio as the hot pixels,
/// the whole frame, bias included, was multiplied by one number, which is the scale. Otherwise the scale follows from
/// the kind of numbers (0…1, electrons, ADU), and b/scale is the ratio of the dark signals: 1 when exposure and
/// temperature match.
/// </remarks>
/// <param name="Scale">ADU per unit of the master.</param> <param name="Slope">b; null with too few hot pixels.</param>
/// <param name="Ratio">Dark signal in the fresh darks over that in the master; null with too few hot pixels.</param>
/// <param name="Numbers">Kind of numbers in words: "ADU", "0 to 1", "the sum of 40 frames" …</param>
/// <param name="BiasOff">Whether the bias was subtracted, judging by the levels.</param>
/// <param name="HotLimit">Value of the master above which a pixel is hot.</param>
internal sealed record MasterScale(
    double Scale,
    Measurement? Slope,
    Measurement? Ratio,
    string Numbers,
    bool BiasOff,
    double HotLimit
)
{
    private const double HotSigmas = 12,
        Alike = 0.03;

    // logarithms of ratios: a sensor that has aged some years may well differ by this much
    private const double NearMultiple = 0.3,
        NearUnit = 0.15,
        Clearly = 0.1;

    private static readonly double[] OtherFullScales = [4095, 16383]; // 12-bit and 14-bit converters
    private const int MinHot = 12;
    private const double FullScale = 65535;

    /// <summary>In words: "ADU, bias in it".</summary>
    public string Words => $"{Numbers}, {(BiasOff ? "bias taken off" : "bias in it")}";

    /// <summary>The same scale once the bias pattern is found to be still in the master.</summary>
    public MasterScale WithOffset() => this with { Numbers = Numbers + ", a constant added", BiasOff = false };

    public static MasterScale Find(
        ReadOnlySpan<float> master,
        ReadOnlySpan<float> fresh,
        double? gain,
        bool saysElectrons = false
    )
    {
        double masterMedian = RobustSpread.Median(master),
            freshMedian = RobustSpread.Median(fresh),
            sigma = RobustSpread.Measure(master);
        double limit = masterMedian + HotSigmas * Math.Max(sigma, 1e-12),
            largest = 0;
        foreach (float v in master)
            if (float.IsFinite(v))
                largest = Math.Max(largest, v);
        Measurement? slope = HotSlope(master, fresh, masterMedian, freshMedian, limit);
        double levels = masterMedian > 0 ? freshMedian / masterMedian : double.NaN;
        (double scale, string numbers, bool off) = Choose(slope, levels, largest, gain, saysElectrons);
        Measurement? ratio = slope is null
            ? null
            : slope with
            {
                Value = slope.Value / scale,
                StandardUncertainty = slope.StandardUncertainty / scale,
                Method = "dark signal of the hot pixels, fresh over master",
            };
        return new MasterScale(scale, slope, ratio, numbers, off, limit);
    }

    /// <summary>
    /// ADU with the bias in it when the levels agree; otherwise the interpretation that best fits the hot pixels, the
    /// plain one unless another fits clearly better.
    /// </summary>
    private static (double Scale, string Numbers, bool BiasOff) Choose(
        Measurement? slope,
        double levels,
        double largest,
        double? gain,
        bool saysElectrons
    )
    {
        double unit = largest <= 1.5 ? FullScale : 1;
        string name = unit == 1 ? "ADU" : "0 to 1";
        if (Math.Abs(levels / unit - 1) < Alike)
            return (unit, name, false);
        (double Scale, string Numbers) best = (unit, name);
        if (slope is not { } b)
            return (unit, name, true);
        double Off(double scale) => Math.Abs(Math.Log(b.Value / scale));
        // One number for level and hot pixels alike: the whole frame was multiplied, bias included.
        if (levels > 0 && Off(levels) < NearMultiple && Off(levels) + Clearly < Off(unit))
            return (levels, Multiple(levels), false);
        (double Scale, string Numbers)[] others =
            unit == 1
                ? gain is double k && k > 0 && (saysElectrons || Off(1 / k) < Alike)
                    ? [(1 / k, "electrons")]
                    : []
                : [.. OtherFullScales.Select(full => (full, $"0 to 1 of {QuantityText.Count((long)full + 1)}"))];
        foreach ((double Scale, string Numbers) other in others)
            if (Off(other.Scale) < NearUnit && Off(other.Scale) + (saysElectrons ? 0 : Alike) < Off(best.Scale))
                best = other;
        return (best.Scale, best.Numbers, true);
    }

    private static string Multiple(double levels)
    {
        double times = 1 / levels;
        return times > 1.5 && Math.Abs(times / Math.Round(times) - 1) < 0.01
            ? $"the sum of {QuantityText.Number(Math.Round(times))} frames"
            : $"multiplied by {QuantityText.Number(times, 3)}";
    }

    /// <summary>
    /// Median ratio of the hot pixels above their frames' levels; saturated pixels are left out.
    /// </summary>
    private static Measurement? HotSlope(
        ReadOnlySpan<float> master,
        ReadOnlySpan<float> fresh,
        double masterMedian,
        double freshMedian,
        double limit
    )
    {
        float top = 0;
        foreach (float v in fresh)
            top = Math.Max(top, v);
        List<double> ratios = [];
        for (int i = 0; i < master.Length; i++)
            if (master[i] > limit && fresh[i] < 0.98f * top)
                ratios.Add((fresh[i] - freshMedian) / (master[i] - masterMedian));
        if (ratios.Count < MinHot)
            return null;
        double[] all = [.. ratios];
        double u = OrderStatistics.MedianToMeanError * OrderStatistics.MadSigma(all) / Math.Sqrt(all.Length),
            median = OrderStatistics.Median(all);
        return median > 0 ? new Measurement(median, u, "1", all.Length, "median over hot pixels") : null;
    }
}
