using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>Straight line of dark level (or variance) against exposure.</summary>
internal sealed record DarkSignalFit
{
    /// <summary>
    /// Rise per second. Its uncertainty includes the pedestal jitter, widened by Student's t when the jitter is known
    /// from few frames.
    /// </summary>
    public required Measurement Slope { get; init; }

    /// <summary>Value at zero exposure.</summary>
    public required Measurement Intercept { get; init; }

    /// <summary>
    /// Standard deviation common to all points that their own uncertainties do not explain: jumps of the pedestal from
    /// frame to frame; 0 when none is needed.
    /// </summary>
    public double PedestalJitter { get; init; }

    /// <summary>χ² of the line with the stated uncertainties only.</summary>
    public double ChiSquared { get; init; }

    /// <summary>Number of points minus 2.</summary>
    public int DegreesOfFreedom { get; init; }

    /// <summary>
    /// Quadratic term of a parabola fit, per s²; null with fewer than three exposures or too few points.
    /// </summary>
    public Measurement? Curvature { get; init; }

    /// <summary>Probability of so large a quadratic term by chance; 1 when none was fitted.</summary>
    public double CurvatureProbability { get; init; } = 1;

    /// <summary>
    /// Largest deviation of the parabola from its chord over the exposures, as a share of the rise; 0 when no curvature
    /// was fitted.
    /// </summary>
    public double CurvatureShare { get; init; }

    /// <summary>
    /// Whether the level grows linearly with exposure: there is no curvature both significant (1 %) and larger than 1 %
    /// of the rise.
    /// </summary>
    public bool Linear => !(CurvatureProbability < 0.01 && CurvatureShare > 0.01);

    /// <summary>
    /// Whether the slope is significantly above zero (95 %, one-sided); if not, report <see cref="UpperLimit"/>
    /// instead.
    /// </summary>
    public bool Resolved => Slope.Value > Probability.OneSided95 * Slope.StandardUncertainty;

    /// <summary>Upper limit of the slope (95 %, one-sided): max(slope, 0) + 1.645u.</summary>
    public double UpperLimit => Math.Max(0, Slope.Value) + Probability.OneSided95 * Slope.StandardUncertainty;
}
