namespace SensorProfile.FixedPattern;

/// <summary>Whether a pixel's signal departs from a straight line against the exposure.</summary>
internal static class LineMisfit
{
    private const double Sigmas = 7;                     // a normal value exceeds it on one side with probability 1.3e-12
    private const double LeastShare = 0.05;              // of the range: smaller bends do not matter to a scaled dark

    /// <summary>Judges the signal at the middle exposures against the line: the largest residual exceeds 7 of its standard errors and 5 % of the range of the pixel's own signals (not of the line's
    /// rise: that of a pixel that is brightest at a middle exposure may be 0).</summary>
    /// <param name="line">The line.</param> <param name="levels">Levels and noise.</param> <param name="signals">Signal of each group above the typical pixel's, e-.</param>
    /// <param name="slope">Relative slope, e-/s.</param> <param name="channel">Channel.</param> <param name="gain">e-/ADU.</param> <param name="noiseFactor">By how much the pixel's variance exceeds the expected.</param>
    public static bool Exceeds(ExposureLine line, SeriesLevels levels, ReadOnlySpan<double> signals, double slope, int channel, double gain, double noiseFactor)
    {
        if (signals.Length < 3) return false;
        double mean = 0, weight = 0, lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        for (int g = 0; g < signals.Length; g++)
        {
            mean += levels.Frames[g] * signals[g];
            weight += levels.Frames[g];
            lowest = Math.Min(lowest, signals[g]);
            highest = Math.Max(highest, signals[g]);
        }
        mean /= weight;
        double range = highest - lowest;                     // no residual can be larger
        for (int g = 0; g < signals.Length; g++)
        {
            double least = Sigmas * Sigmas * (levels.Variances[g][channel] * gain * gain + Math.Max(0, signals[g])) * noiseFactor / levels.Frames[g];
            if (!(range * range > least)) continue;                // nearly always: squares in place of roots keep this quick
            double residual = Math.Abs(signals[g] - mean - slope * (line.Seconds[g] - line.Centre));
            if (residual > LeastShare * range && residual * residual > least) return true;
        }
        return false;
    }
}
