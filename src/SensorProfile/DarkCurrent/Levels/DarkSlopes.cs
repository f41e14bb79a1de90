using SensorProfile.Fitting.Statistics;
using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>Fits the lines against exposure at one temperature: typical pixel, mean of all pixels, noise.</summary>
internal static class DarkSlopes
{
    private static DarkSignalFit? Median(DarkLevels levels, MedianShift shift, int? channel = null) =>
        DarkSignalSlope.Fit(levels.MedianPoints(shift, channel), "e-");

    // All frames share the uncertainty of the shift, so it is applied to what the shift takes from the slope.
    public static DarkSignalFit? Typical(DarkLevels levels, MedianShift shift, int? channel = null)
    {
        if (Median(levels, shift, channel) is not { } line)
            return null;
        double taken = Median(levels, MedianShift.None, channel)!.Slope.Value - line.Slope.Value,
            doubt = MedianShift.RelativeDoubt * taken;
        return line with
        {
            Slope = line.Slope with
            {
                StandardUncertainty = Math.Sqrt(
                    line.Slope.StandardUncertainty * line.Slope.StandardUncertainty + doubt * doubt
                ),
            },
        };
    }

    // A saturated hot pixel stops rising, which bends the mean. If there are two exposures without any saturated pixel,
    // only those are used.
    public static DarkSignalFit? Mean(DarkLevels levels, ScreenedSet[] sets, double saturation)
    {
        ScreenedSet[] open = [.. sets.Where(s => s.Frames.All(f => f.Channels.All(c => c.Maximum < saturation)))];
        bool enough = open.Select(s => s.Set.ExposureSeconds).Distinct().Count() > 1;
        DarkSignalFit? line = DarkSignalSlope.Fit((enough ? levels.Only(open) : levels).Points(c => c.Mean, 1), "e-");
        if (line is null || enough || open.Length == sets.Length)
            return line;
        double filled = sets.SelectMany(s => s.Frames)
            .Max(f =>
                f.Channels.Average(c => c.Maximum >= saturation ? c.ShareAtMaximum * c.Maximum : 0)
                / Math.Max(1, f.Frame.ExposureSeconds ?? 1)
            );
        return line with
        {
            Slope = line.Slope with
            {
                StandardUncertainty = line.Slope.StandardUncertainty + filled,
                Method = line.Slope.Method + ", saturated pixels in the uncertainty",
            },
        };
    }

    public static DarkSignalFit? Variance(IReadOnlyList<(double, double, double)> points)
    {
        DarkSignalFit? line = DarkSignalSlope.Fit(points, "e-²", pedestalJitters: false);
        if (
            line is null
            || line.DegreesOfFreedom < 1
            || Probability.ChiSquaredTail(line.ChiSquared, line.DegreesOfFreedom) > 0.01
        )
            return line;
        double widening =
            Math.Sqrt(line.ChiSquared / line.DegreesOfFreedom) * Probability.CoverageWidening(line.DegreesOfFreedom);
        return line with
        {
            Slope = line.Slope with
            {
                StandardUncertainty = line.Slope.StandardUncertainty * widening,
                Method = line.Slope.Method + ", widened for its scatter",
            },
        };
    }
}
