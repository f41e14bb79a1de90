using SensorProfile.Drift.Archive;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>Matches the hot pixels of two profiles pixel by pixel.</summary>
/// <remarks>
/// A pixel counts as changed when the difference of its excess rates, with the factor common to all hot pixels removed,
/// exceeds a limit that any of the candidates passes by chance in only 5 % of comparisons (Bonferroni). The uncertainty
/// combines that of both maps, the scatter that ordinary pixels really show, and a relative part from the scatter of
/// bright hot pixels (each has its own temperature law, and one session may have been a little warmer). A pixel whose
/// change cannot be established counts as kept.
/// </remarks>
internal sealed class HotPixelMatch
{
    private const double Surely = 10,
        Brightly = 30,
        OwnErrors = 6; // in standard uncertainties
    private const int MinForFactor = 10;

    private readonly PixelRates first,
        last;
    private readonly double threshold;

    private HotPixelMatch(PixelRates first, PixelRates last, double threshold)
    {
        (this.first, this.last, this.threshold) = (first, last, threshold);
        NoiseFactor = OrdinaryScatter();
        HashSet<int> all = [.. first.Above(first.TypicalRate + threshold), .. last.Above(last.TypicalRate + threshold)];
        int[] measured = [.. all.Order().Where(IsMeasured)];
        Candidates = [.. measured.Where(i => !first.Flickers(i) && !last.Flickers(i))];
        Flickering = measured.Length - Candidates.Count;
        (Factor, RelativeScatter) = CommonFactor();
    }

    /// <summary>Hot in either profile, measured in both, not flickering.</summary>
    public IReadOnlyList<int> Candidates { get; }

    /// <summary>Pixels left out because they flicker.</summary>
    public int Flickering { get; }

    /// <summary>Factor common to the hot pixels, now over then; null with too few of them.</summary>
    public Measurement? Factor { get; }

    private double NoiseFactor { get; }

    private double RelativeScatter { get; }

    public static HotPixelMatch Match(PixelRates first, PixelRates last, double threshold) =>
        new(first, last, threshold);

    /// <summary>Excess over the typical pixel, with its uncertainty from the noise of the maps alone.</summary>
    public (Measurement From, Measurement To) Excess(int index) => (Excess(first, index), Excess(last, index));

    /// <summary>
    /// Pixels clearly hot in both profiles, chosen by the geometric mean of both so that neither is favoured.
    /// </summary>
    public IEnumerable<int> SurelyHotInBoth(double standardUncertainties) =>
        Candidates.Where(i =>
        {
            (Measurement from, Measurement to) = Excess(i);
            return from.Value > standardUncertainties * from.StandardUncertainty
                && to.Value > standardUncertainties * to.StandardUncertainty
                && from.Value * to.Value > threshold * threshold;
        });

    /// <summary>Every candidate and what happened to it; kept where that cannot be told.</summary>
    public IEnumerable<HotPixelChange> Changes()
    {
        double limit = Probability.NormalQuantile(1 - 0.025 / Math.Max(1, Candidates.Count)),
            factor = Factor?.Value ?? 1;
        foreach (int i in Candidates)
        {
            (Measurement from, Measurement to) = Excess(i);
            double common = RelativeScatter * Math.Max(Math.Abs(factor * from.Value), Math.Abs(to.Value));
            double u = Math.Sqrt(
                Math.Pow(factor * from.StandardUncertainty, 2) + Math.Pow(to.StandardUncertainty, 2) + common * common
            );
            double z = u > 0 ? (to.Value - factor * from.Value) / u : 0;
            yield return new HotPixelChange(
                i % first.Width + 1,
                i / first.Width + 1,
                Kind(z, limit, IsHot(from), IsHot(to)),
                from,
                to,
                z
            );
        }
    }

    private static PixelChange Kind(double z, double limit, bool before, bool now) =>
        Math.Abs(z) <= limit ? PixelChange.Kept
        : z > 0
            ? before ? PixelChange.Brighter
                : PixelChange.New
        : now ? PixelChange.Fainter
        : PixelChange.Healed;

    private bool IsHot(Measurement excess) =>
        excess.Value > threshold && excess.Value > OwnErrors * excess.StandardUncertainty;

    private bool IsMeasured(int i)
    {
        (double a, double ua) = first.At(i);
        (double b, double ub) = last.At(i);
        return double.IsFinite(a) && double.IsFinite(b) && double.IsFinite(ua) && double.IsFinite(ub);
    }

    private Measurement Excess(PixelRates rates, int index)
    {
        (double rate, double uncertainty) = rates.At(index);
        return new Measurement(
            rate - rates.TypicalRate,
            uncertainty * NoiseFactor,
            "e-/px/s",
            1,
            "dark-rate map, typical pixel taken off"
        );
    }

    /// <summary>
    /// Ratio of the scatter of ordinary pixels between the profiles to their stated uncertainties; never below 1.
    /// </summary>
    private double OrdinaryScatter()
    {
        if (first.Ordinary() is not { } ordinary || last.Ordinary() is null)
            return 1;
        List<double> scatter = [];
        foreach (int i in ordinary.Where(IsMeasured))
        {
            ((double a, double ua), (double b, double ub)) = (first.At(i), last.At(i));
            double u = double.Hypot(ua, ub);
            if (u > 0)
                scatter.Add((b - last.TypicalRate - a + first.TypicalRate) / u);
        }
        return scatter.Count < 100 ? 1 : Math.Max(1, OrderStatistics.MadSigma([.. scatter]));
    }

    private (Measurement? Factor, double Scatter) CommonFactor()
    {
        double[] logs = Logs(Surely, out _);
        if (logs.Length < MinForFactor)
            return (null, 0);
        double centre = OrderStatistics.Median(logs),
            spread = OrderStatistics.MadSigma(logs);
        double u = OrderStatistics.MedianToMeanError * spread / Math.Sqrt(logs.Length),
            factor = Math.Exp(centre);
        double[] bright = Logs(Brightly, out double noise);
        double extra =
            bright.Length < MinForFactor
                ? 0
                : Math.Sqrt(Math.Max(0, Math.Pow(OrderStatistics.MadSigma(bright), 2) - noise));
        return (
            new Measurement(factor, factor * u, "1", logs.Length, "median ratio of the excess rates of hot pixels"),
            extra
        );
    }

    private double[] Logs(double sure, out double noise)
    {
        List<double> logs = [],
            variances = [];
        foreach (int i in SurelyHotInBoth(sure))
        {
            (Measurement from, Measurement to) = Excess(i);
            logs.Add(Math.Log(to.Value / from.Value));
            variances.Add(
                Math.Pow(from.StandardUncertainty / from.Value, 2) + Math.Pow(to.StandardUncertainty / to.Value, 2)
            );
        }
        noise = variances.Count == 0 ? 0 : OrderStatistics.Median([.. variances]);
        return [.. logs];
    }
}
