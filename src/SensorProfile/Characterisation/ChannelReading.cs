using SensorProfile.Pixels;

namespace SensorProfile.Characterisation;

/// <summary>Numbers of one channel of one frame, from its exact histogram.</summary>
internal sealed record ChannelReading
{
    /// <summary>Pixels.</summary>
    public required long Pixels { get; init; }

    /// <summary>Mean of all pixels, ADU.</summary>
    public required double Mean { get; init; }

    /// <summary>Median pixel, interpolated inside its code step, ADU.</summary>
    public required double Median { get; init; }

    /// <summary>Variance over the pixels within 5 standard deviations, ADU².</summary>
    public required double ClippedVariance { get; init; }

    /// <summary>Mean of these pixels, ADU.</summary>
    public required double ClippedMean { get; init; }

    /// <summary>Share of pixels far above the rest (beyond the clip, on the bright side).</summary>
    public required double ShareAbove { get; init; }

    /// <summary>Highest code.</summary>
    public required int Maximum { get; init; }

    /// <summary>Share of pixels at the highest code.</summary>
    public required double ShareAtMaximum { get; init; }

    /// <summary>Share of pixels heaped up at the lowest code: 0 when the distribution fades out there as it should.</summary>
    public required double ShareClippedBelow { get; init; }

    /// <summary>Pixels far above and below the level.</summary>
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
            ClippedMean = clipped.Mean,
            ShareAbove = (double)codes.CountBetween(clipped.Highest + 1, codes.Highest) / codes.Count,
            Maximum = codes.Maximum,
            ShareAtMaximum = channel.ShareAtTop,
            ShareClippedBelow = ClippedBelow(codes, codeStep),
            Tail = DistributionTail.Of(codes, clipped, codeStep),
        };
    }

    /// <summary>Median of grouped data: the half-way point inside the code that holds it, as if the code's pixels were spread evenly over its step.</summary>
    internal static double GroupedMedian(IntegerHistogram codes, int codeStep)
    {
        int code = (int)Math.Round(codes.Median);
        while (code > codes.Lowest && codes[code] == 0) code--;
        double below = codes.CountBetween(codes.Lowest, code - 1), here = codes[code];
        return here > 0 ? code - codeStep / 2.0 + codeStep * (codes.Count / 2.0 - below) / here : codes.Median;
    }

    // A distribution that fades out has fewer pixels at its last code than at the one before it; a clipped one has more. At code 0 nothing can fade out: what would lie below is there too.
    private static double ClippedBelow(IntegerHistogram codes, int codeStep)
    {
        int lowest = codes.Minimum;
        return lowest == 0 || codes[lowest] > codes[lowest + codeStep] ? codes.ShareAt(lowest) : 0;
    }
}
