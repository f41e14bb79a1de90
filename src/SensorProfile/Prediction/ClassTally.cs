using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>Residuals of the pixels of one class in one comparison.</summary>
internal sealed class ClassTally
{
    private const double Sigmas = 1.959963984540054; // 95 % of a normal distribution
    private const int MinForRobust = 8;

    private readonly List<Entry> entries = [];

    /// <summary>Pixels.</summary>
    public int Pixels => entries.Count;

    /// <summary>Adds a pixel.</summary>
    /// <param name="residual">Taken minus computed, the common level removed, e-.</param>
    /// <param name="noiseVariance">Variance of the taken master, e-².</param>
    /// <param name="predictionVariance">Variance of the computed one, e-².</param>
    /// <param name="signal">Computed signal above the typical pixel's, e-.</param>
    public void Add(double residual, double noiseVariance, double predictionVariance, double signal) =>
        entries.Add(new((float)residual, (float)noiseVariance, (float)predictionVariance, (float)signal));

    /// <summary>Adds the pixels of another class.</summary>
    public void Add(ClassTally other) => entries.AddRange(other.entries);

    /// <summary>Pixels within their 95 % interval.</summary>
    public int Within(ClassDoubt doubt)
    {
        int within = 0;
        foreach (Entry e in entries)
            if ((double)e.Residual * e.Residual <= Sigmas * Sigmas * (e.Noise + doubt.Widen(e.Prediction, e.Signal)))
                within++;
        return within;
    }

    /// <summary>
    /// The error that all pixels share, as a share of their signal, with its variance; null where no pixel has a
    /// signal.
    /// </summary>
    /// <remarks>
    /// Weighted least squares of r = m·S: m = Σ(r·S/W)/Σ(S²/W), W the variance of noise and prediction; the variance of
    /// m is 1/Σ(S²/W), times the scatter of the residuals beyond W.
    /// </remarks>
    public (double Share, double Variance)? Common()
    {
        double rs = 0,
            ss = 0,
            rr = 0;
        int n = 0;
        foreach (Entry e in entries)
        {
            if (!(e.Signal > 0))
                continue;
            double w = 1 / ((double)e.Noise + e.Prediction);
            (rs, ss, rr) = (
                rs + w * e.Residual * e.Signal,
                ss + w * e.Signal * e.Signal,
                rr + w * e.Residual * e.Residual
            );
            n++;
        }
        if (n < 2 || !(ss > 0))
            return null;
        double share = rs / ss,
            scatter = Math.Max(1, (rr - share * rs) / (n - 1));
        return (share, scatter / ss);
    }

    /// <summary>The figures; null without a pixel.</summary>
    public PredictionFigures? Figures(ClassDoubt doubt)
    {
        int n = entries.Count;
        if (n == 0)
            return null;
        double[] all = [.. entries.Select(e => (double)e.Residual)];
        double spread =
            n >= MinForRobust
                ? OrderStatistics.MadToSigma * OrderStatistics.MedianAbsoluteDeviation(all, 0)
                : Math.Sqrt(all.Average(r => r * r));
        return Make(
            n,
            (double)Within(doubt) / n,
            spread,
            Math.Sqrt(OrderStatistics.Median([.. entries.Select(e => (double)e.Noise)])),
            Math.Sqrt(OrderStatistics.Median([.. entries.Select(e => e.Noise + doubt.Widen(e.Prediction, e.Signal))]))
        );
    }

    /// <summary>
    /// Several sets as one: shares by their pixels, deviations as root mean squares; null without any.
    /// </summary>
    public static PredictionFigures? Pool(IEnumerable<PredictionFigures?> sets)
    {
        PredictionFigures[] known = [.. sets.OfType<PredictionFigures>()];
        long n = known.Sum(f => f.Pixels);
        if (n == 0)
            return null;
        double Mean(Func<PredictionFigures, double> of) => known.Sum(f => f.Pixels * of(f)) / n;
        return Make(
            n,
            Mean(f => f.Coverage),
            Math.Sqrt(Mean(f => f.Residual.Value * f.Residual.Value)),
            Math.Sqrt(Mean(f => f.Noise * f.Noise)),
            Math.Sqrt(Mean(f => f.Expected * f.Expected))
        );
    }

    // The MAD of n normal values scatters by 1.65/√(2n) of itself: its efficiency is 37 % of the standard deviation's,
    // 1/√0.37 = 1.65.
    private static PredictionFigures Make(long n, double coverage, double residual, double noise, double expected) =>
        new(
            n,
            coverage,
            new(
                residual,
                residual * 1.65 / Math.Sqrt(2.0 * n),
                "e-",
                n,
                "robust standard deviation of computed minus taken"
            ),
            noise,
            expected
        );

    private readonly record struct Entry(float Residual, float Noise, float Prediction, float Signal);
}
