namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Whether a pixel's signal departs from a straight line against the exposure.</summary>
internal static class SlopeMisfit
{
    // a normal value exceeds it on one side with probability 1.3e-12
    private const double Sigmas = 7;
    private const double MinShare = 0.05; // of the range: smaller bends do not matter to a scaled dark

    /// <summary>Judges the signal at the middle exposures against the line: the largest residual exceeds 7 of its
    /// standard errors and 5 % of the range of the pixel's own signals (not of the line's
    /// rise: that of a pixel that is brightest at a middle exposure may be 0).</summary>
    /// <param name="line">The line.</param>
    /// <param name="levels">Levels and noise.</param>
    /// <param name="signals">Signal of each group above the typical pixel's, e-.</param>
    /// <param name="slope">Relative slope, e-/s.</param>
    /// <param name="channel">Channel.</param>
    /// <param name="gain">e-/ADU.</param>
    /// <param name="noiseFactor">By how much the pixel's variance exceeds the expected.</param>
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
            // A residual larger than the range of all signals is rare (of n groups with equal weights ½·√n of it at
            // most): nearly every pixel ends here, without a root.
            if (!(range * range > least))
                continue;
            double residual = Math.Abs(signals[g] - mean - slope * (line.Seconds[g] - line.Centre));
            if (residual > MinShare * range && residual * residual > least)
                return true;
        }
        return false;
    }

    /// <summary>The same for a pixel of which some group scatters more than its signal explains, such as one that was
    /// hit by a charged particle: a residual counts only where it exceeds 7 of the standard
    /// errors that the noise of all groups gives it, each group's own scatter in place of the expected where that is
    /// larger.</summary>
    /// <param name="line">The line.</param>
    /// <param name="levels">Levels and noise.</param>
    /// <param name="signals">As above.</param>
    /// <param name="slope">As above.</param>
    /// <param name="channel">Channel.</param>
    /// <param name="gain">e-/ADU.</param>
    /// <param name="scatter">Variance of the pixel in each group, e-²; 0 where the expected counts.</param>
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
