using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// Fits a line through sets of frames when each set has an offset of its own: pedestal or temperature changes from set
/// to set.
/// </summary>
/// <remarks>Frames of one exposure scatter by their own jitter; if the line then fits with a probability below 0.5 %, a
/// standard deviation common to the sets is added to the mean of every set, just large enough to make χ² of the means
/// about the line equal to their number minus 2 (Mandel and Paule 1970, Anal. Chem. 42, 1194). Treating such frames as
/// independent would make the uncertainty too small by √n.</remarks>
internal static class SetOffsets
{
    private const double Significance = 0.005;
    private const int MinSets = 4; // with three, one degree of freedom says nothing about an offset

    /// <summary>
    /// Fits the line; null when the frames agree with a line, when no exposure was repeated, or with too few exposures.
    /// </summary>
    /// <param name="t">Exposures, s.</param>
    /// <param name="y">Levels.</param>
    /// <param name="u">Standard uncertainties of the levels.</param>
    /// <param name="unit">Unit of the levels.</param>
    public static (Measurement Slope, Measurement Intercept)? Fit(double[] t, double[] y, double[] u, string unit)
    {
        int[][] sets = [.. Enumerable.Range(0, t.Length).GroupBy(i => t[i]).Select(g => g.ToArray())];
        if (sets.Length < MinSets || t.Length - sets.Length < 2)
            return null;
        Jitter frames = Jitter.Within(t, y, u);
        WeightedMean[] means =
        [
            .. sets.Select(s =>
                WeightedMean.Combine(
                    [.. s.Select(i => y[i])],
                    [.. s.Select(i => Math.Sqrt(u[i] * u[i] + frames.Size * frames.Size))]
                )
            ),
        ];
        double[] x = [.. sets.Select(s => t[s[0]])],
            level = [.. means.Select(m => m.Value)],
            doubt = [.. means.Select(m => m.Uncertainty)];
        if (Probability.ChiSquaredTail(StraightLine.Fit(x, level, doubt).ChiSquared, sets.Length - 2) >= Significance)
            return null;
        Jitter offsets = Jitter.About(x, level, doubt, degree: 1);
        StraightLine line = StraightLine.Fit(x, level, offsets.AddedTo(doubt));
        double widening = Probability.CoverageWidening(sets.Length - 2);
        const string Method = "weighted straight line through sets, their common offsets estimated";
        return (
            new(line.Slope, line.SlopeUncertainty * widening, unit + "/s", t.Length, Method),
            new(line.Intercept, line.InterceptUncertainty * widening, unit, t.Length, Method)
        );
    }
}
