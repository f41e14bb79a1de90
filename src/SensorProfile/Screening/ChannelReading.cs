using SensorProfile.Fitting.Statistics;
using SensorProfile.PhotonTransfer;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Screening;

/// <summary>Statistics of one channel of one frame, from its exact histogram.</summary>
internal sealed record ChannelReading
{
    // Two codes hold this share of a normal distribution only when σ is below half a step, and of one cut off at its
    // centre when σ is below two thirds of a step: read noise cannot be determined there anyway.
    private const double CoarseShare = 0.98;

    /// <summary>Number of pixels.</summary>
    public required long Pixels { get; init; }

    /// <summary>Mean of all pixels, ADU.</summary>
    public required double Mean { get; init; }

    /// <summary>Median pixel, interpolated inside its code step, ADU.</summary>
    public required double Median { get; init; }

    /// <summary>Variance over the pixels within 5 standard deviations, ADU².</summary>
    public required double ClippedVariance { get; init; }

    /// <summary>
    /// Standard deviation of the normal distribution that is as dense at the median as the pixels are, ADU: below that of
    /// all pixels where glow or warm pixels spread them.
    /// </summary>
    public required double CoreSpread { get; init; }

    /// <summary>
    /// Standard uncertainty of the levels from rounding to codes, shared by frames of the same level, ADU
    /// (<see cref="ReadNoise.LevelDoubtAdu"/>).
    /// </summary>
    public required double RoundingDoubt { get; init; }

    /// <summary>Mean of the pixels within 5 standard deviations, ADU.</summary>
    public required double ClippedMean { get; init; }

    /// <summary>Share of pixels far above the rest (above the clipping limit).</summary>
    public required double ShareAbove { get; init; }

    /// <summary>Highest code.</summary>
    public required int Maximum { get; init; }

    /// <summary>Share of pixels at the highest code.</summary>
    public required double ShareAtMaximum { get; init; }

    /// <summary>
    /// Share of pixels piled up at the lowest code: 0 when the distribution tails off there as it should.
    /// </summary>
    public required double ShareClippedBelow { get; init; }

    /// <summary>The code that one pixel in a thousand exceeds, above the median, ADU: hot pixels and noise.</summary>
    public required double BrightSpread { get; init; }

    /// <summary>Tails of pixels far above and below the level.</summary>
    public required DistributionTail Tail { get; init; }

    public static ChannelReading Of(ChannelStatistics channel, int codeStep)
    {
        IntegerHistogram codes = channel.Codes;
        ClippedMoments clipped = channel.Clipped();
        return new ChannelReading
        {
            Pixels = codes.Count,
            Mean = codes.Mean,
            Median = GroupedMedian(codes, codeStep),
            ClippedVariance = clipped.Variance,
            CoreSpread = SpreadAtMedian(codes, codeStep),
            RoundingDoubt = ReadNoise.LevelDoubtAdu(clipped.Variance, codeStep),
            ClippedMean = clipped.Mean,
            ShareAbove = (double)codes.CountBetween(clipped.Highest + 1, codes.Highest) / codes.Count,
            Maximum = codes.Maximum,
            ShareAtMaximum = channel.ShareAtTop,
            ShareClippedBelow = ClippedBelow(codes, codeStep),
            BrightSpread = codes.Quantile(0.999) - codes.Median,
            Tail = DistributionTail.Measure(codes, clipped, codeStep),
        };
    }

    // from the fifth of the pixels about the median, in whole codes
    private static double SpreadAtMedian(IntegerHistogram codes, int codeStep)
    {
        int low = (int)Math.Round(codes.Quantile(0.4)),
            high = (int)Math.Round(codes.Quantile(0.6));
        double share = (double)codes.CountBetween(low, high) / codes.Count;
        return (high - low + codeStep) / (share * Math.Sqrt(2 * Math.PI));
    }

    /// <summary>
    /// Median of grouped data: interpolated within its code, as if the pixels were normally distributed from one edge
    /// of the code to the other.
    /// </summary>
    /// <remarks>
    /// Edges e₁, e₂ of the code with shares F₁, F₂ of the pixels below them: median = e₁ − (e₂ − e₁)·Φ⁻¹(F₁)/(Φ⁻¹(F₂) −
    /// Φ⁻¹(F₁)); exact for normal noise of any size, whereas pixels spread evenly over the code would put the median up
    /// to 0.04 steps off at a noise of 0.6 steps, and more below. Shares are (n + ½)/(N + 1), so that a code that holds
    /// all pixels has edges too.
    /// </remarks>
    internal static double GroupedMedian(IntegerHistogram codes, int codeStep)
    {
        int code = (int)Math.Round(codes.Median);
        while (code > codes.Lowest && codes[code] == 0)
            code--;
        long below = codes.CountBetween(codes.Lowest, code - 1),
            here = codes[code];
        if (here == 0)
            return codes.Median;
        double lower = Edge(below),
            upper = Edge(below + here);
        return code - codeStep / 2.0 - codeStep * lower / (upper - lower);

        double Edge(long pixels) => Probability.NormalQuantile((pixels + 0.5) / (codes.Count + 1.0));
    }

    // A distribution that tails off has fewer pixels at its last code than at the one before; a clipped one has more.
    // At code 0 nothing can tail off, since everything below is counted there too. Noise below half a step piles up in
    // one or two codes without being clipped.
    private static double ClippedBelow(IntegerHistogram codes, int codeStep)
    {
        int lowest = codes.Minimum;
        bool coarse = codes.ShareAt(lowest) + codes.ShareAt(lowest + codeStep) > CoarseShare;
        return lowest == 0 || (codes[lowest] > codes[lowest + codeStep] && !coarse) ? codes.ShareAt(lowest) : 0;
    }
}
