namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Tests whether the signal of a pixel departs from a straight line against exposure.</summary>
internal static class SlopeMisfit
{
    // a normal value exceeds this on one side with probability 1.3e-12
    private const double Sigmas = 7;
    private const double MinShare = 0.05; // of the range: smaller bends do not matter for a scaled dark

    /// <summary>
    /// Compares the signal at the middle exposures with the line: true when the largest residual exceeds 7 of its
    /// standard errors and 5 % of the range of the signals of the pixel (not of the rise of the line, which may be 0
    /// for a pixel that is brightest at a middle exposure).
    /// </summary>
    /// <param name="line">The line.</param>
    /// <param name="levels">Levels and noise.</param>
    /// <param name="signals">Signal of each group above the typical pixel, e-.</param>
    /// <param name="slope">Relative slope, e-/s.</param>
    /// <param name="channel">Channel.</param>
    /// <param name="gain">e-/ADU.</param>
    /// <param name="noiseFactor">Factor by which the variance of the pixel exceeds the expected one.</param>
    public static bool Exceeds(
        ExposureSlope line,
        SeriesLevels levels,
        ReadOnlySpan<double> signals,
        double slope,
        int channel,
        double gain,
        double noiseFactor
    )
    {
        if (signals.Length < 3)
            return false;
        double mean = Mean(levels, signals),
            range = Range(signals);
        for (int g = 0; g < signals.Length; g++)
        {
            double least =
                Sigmas * Sigmas * Variance(levels, signals, g, channel, gain) * noiseFactor / levels.Frames[g];
            // A residual larger than the range of all signals is rare (for n groups with equal weights, at most ½·√n of
            // it), so nearly every pixel ends here without a square root.
            if (!(range * range > least))
                continue;
            double residual = Math.Abs(signals[g] - mean - slope * (line.Seconds[g] - line.Centre));
            if (residual > MinShare * range && residual * residual > least)
                return true;
        }
        return false;
    }

    /// <summary>
    /// The same for a pixel with a group that scatters by more than its signal explains, for example after a
    /// charged-particle hit: a residual counts only if it exceeds 7 standard errors from the noise of all groups, with
    /// the scatter of a group in place of the expected one where larger.
    /// </summary>
    /// <param name="line">The line.</param>
    /// <param name="levels">Levels and noise.</param>
    /// <param name="signals">As above.</param>
    /// <param name="slope">As above.</param>
    /// <param name="channel">Channel.</param>
    /// <param name="gain">e-/ADU.</param>
    /// <param name="scatter">Variance of the pixel in each group, e-²; 0 to use the expected one.</param>
    public static bool ExceedsScatter(
        ExposureSlope line,
        SeriesLevels levels,
        ReadOnlySpan<double> signals,
        double slope,
        int channel,
        double gain,
        ReadOnlySpan<double> scatter
    )
    {
        double mean = Mean(levels, signals),
            range = Range(signals),
            frames = levels.Frames.Sum(n => (double)n);
        for (int g = 0; g < signals.Length; g++)
        {
            double fromCentre = line.Seconds[g] - line.Centre,
                residual = Math.Abs(signals[g] - mean - slope * fromCentre),
                variance = 0,
                own = 0;
            for (int k = 0; k < signals.Length; k++)
            {
                double noise = Math.Max(scatter[k], Variance(levels, signals, k, channel, gain)) / levels.Frames[k];
                double weight = (k == g ? 1 : 0) - levels.Frames[k] / frames - fromCentre * line.Factors[k];
                variance += weight * weight * noise;
                if (k == g)
                    own = noise;
            }
            if (residual > MinShare * range && residual * residual > Sigmas * Sigmas * Math.Max(own, variance))
                return true;
        }
        return false;
    }

    private static double Variance(
        SeriesLevels levels,
        ReadOnlySpan<double> signals,
        int group,
        int channel,
        double gain
    ) => levels.Variances[group][channel] * gain * gain + Math.Max(0, signals[group]);

    private static double Mean(SeriesLevels levels, ReadOnlySpan<double> signals)
    {
        double mean = 0,
            weight = 0;
        for (int g = 0; g < signals.Length; g++)
        {
            mean += levels.Frames[g] * signals[g];
            weight += levels.Frames[g];
        }
        return mean / weight;
    }

    private static double Range(ReadOnlySpan<double> signals)
    {
        double lowest = double.PositiveInfinity,
            highest = double.NegativeInfinity;
        foreach (double signal in signals)
            (lowest, highest) = (Math.Min(lowest, signal), Math.Max(highest, signal));
        return highest - lowest;
    }
}
