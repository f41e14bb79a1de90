using MathNet.Numerics.Distributions;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// The dark rate of the pixels as a function of their rank, from the quantiles and the hot-pixel curve of a profile.
/// </summary>
/// <remarks>
/// Between the measured ranks the logarithm of the rate is a straight line in the normal score of the rank: exact for a
/// lognormal spread, close for a normal one. Below the median, the line from the median to the 90 % rank, which hot
/// pixels do not reach, is extended: the slow side mirrors the fast one. Above the highest measured rank the rate stays
/// at its last value. Where the profile separates the glow, these rates exclude it.
/// </remarks>
internal sealed class RateDistribution
{
    private const double NinetyPercent = 1.2815515655446004; // Φ⁻¹(0.9)
    private const double Normal95 = 1.959963984540054; // Φ⁻¹(0.975)
    private readonly double[] scores;
    private readonly double[] rates;

    private readonly double ninety; // rate at the 90 % rank

    private RateDistribution(double[] scores, double[] rates)
    {
        (this.scores, this.rates) = (scores, rates);
        ninety = Upper(NinetyPercent);
    }

    /// <summary>The distribution, or null when the profile holds too little of it.</summary>
    /// <param name="pattern">Quantiles and hot-pixel curve at the reference temperature.</param>
    /// <param name="pixels">Pixels of the sensor.</param>
    /// <param name="deviate">Standard normal deviate by which all rates are moved together, in their own standard
    /// uncertainties.</param>
    /// <param name="share">How much of the uncertainties of the rates is left.</param>
    internal static RateDistribution? From(
        FixedPatternProfile pattern,
        long pixels,
        double deviate = 0,
        double share = 1
    )
    {
        var knots = new SortedDictionary<double, double>();
        var counted = new List<(double Share, double Rate)>();
        bool split = pattern.ThermalQuantiles.Count > 0; // then the glow is a part of its own
        foreach (HotPixelCount count in split ? pattern.ThermalCurve : pattern.HotPixelCurve)
            if (count.Count > 0 && count.Count < 0.02 * pixels && count.Threshold > 0)
                counted.Add((1 - Between(count, deviate) / pixels, count.Threshold));
        foreach (RateQuantile quantile in split ? pattern.ThermalQuantiles : pattern.RateQuantiles)
            if (quantile.Share is >= 0.5 and < 1)
                knots[quantile.Share] = quantile.Rate.Value + deviate * share * quantile.Rate.StandardUncertainty;
        RateQuantile[] known =
        [
            .. (split ? pattern.ThermalQuantiles : pattern.RateQuantiles).Where(q => q.Rate.Value > 0),
        ];
        foreach ((double rank, double rate) in counted)
            knots[rank] = rate * Moved(known, rank, deviate * share);
        if (knots.Count < 2 || !knots.ContainsKey(0.5))
            return null;
        double[] rates = [.. knots.Values];
        for (int i = 1; i < rates.Length; i++)
            rates[i] = Math.Max(rates[i], rates[i - 1]);
        return new RateDistribution([.. knots.Keys.Select(share => Normal.InvCDF(0, 1, share))], rates);
    }

    /// <summary>
    /// The count, moved by what the smooth curve through the counts may miss between them: the true one wanders about it like
    /// a random walk that is tied at both ends, in the middle of N pixels by √N/2.
    /// </summary>
    private static double Between(HotPixelCount count, double deviate) =>
        Math.Max(count.Count + deviate * (count.High - count.Low) / (2 * Normal95) / 2, 0.5);

    /// <summary>
    /// Factor of a counted rate: the quantile nearest to it moves it along. Which pixels are hot is a fact of the sensor; in
    /// doubt is only their rate.
    /// </summary>
    private static double Moved(RateQuantile[] known, double rank, double deviates) =>
        known.Length > 0 && known.MinBy(q => Math.Abs(Math.Log((1 - q.Share) / (1 - rank)))) is { } nearest
            ? Math.Max(1 + deviates * nearest.Rate.StandardUncertainty / nearest.Rate.Value, 0.01)
            : 1;

    /// <summary>Normal score of a rank.</summary>
    internal static double Score(double share) => Normal.InvCDF(0, 1, Math.Clamp(share, 1e-12, 1 - 1e-12));

    /// <summary>The rate at a normal score, e-/px/s at the reference temperature.</summary>
    internal double RateAtScore(double score) => score >= 0 ? Upper(score) : Mirrored(-score);

    private double Mirrored(double score)
    {
        double median = rates[0],
            steps = score / NinetyPercent;
        if (ninety <= median)
            return median;
        return median > 0 ? median * Math.Pow(median / ninety, steps) : median - steps * (ninety - median);
    }

    private double Upper(double score)
    {
        int next = 0;
        while (next < scores.Length && !(scores[next] >= score))
            next++;
        if (next == scores.Length)
            return rates[^1];
        if (next == 0)
            return rates[0];
        double part = (score - scores[next - 1]) / (scores[next] - scores[next - 1]);
        double low = rates[next - 1],
            high = rates[next];
        return low > 0 ? low * Math.Pow(high / low, part) : low + part * (high - low);
    }
}
