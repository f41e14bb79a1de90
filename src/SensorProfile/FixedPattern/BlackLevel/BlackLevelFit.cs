using MathNet.Numerics.RootFinding;
using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Black level of every frame as a sum of terms, with the scatter of frames and sets about it.</summary>
/// <remarks>
/// Three variances: pixel noise (known), a jitter s² of every frame, from the differences of consecutive frames of a
/// set (von Neumann 1941, Ann. Math. Stat. 12, 367), and a scatter τ² of every set, from the set means about the fit
/// (after Mandel and Paule 1970, Anal. Chem. 42, 1194). The fit is generalised least squares for these: a share θ = 1 −
/// s/√(s² + nτ²) of the set mean is first subtracted from every value of a set of n frames, which makes the errors
/// independent (Fuller and Battese 1973, J. Am. Stat. Assoc. 68, 626).
/// </remarks>
internal sealed class BlackLevelFit
{
    private readonly LinearFit fit,
        withoutScatter;

    private BlackLevelFit(BlackLevelDesign design, LinearFit fit, LinearFit withoutScatter) =>
        (Design, this.fit, this.withoutScatter) = (design, fit, withoutScatter);

    /// <summary>The terms of the fit.</summary>
    public BlackLevelDesign Design { get; }

    /// <summary>The frames, with the noise that their readings were found to have.</summary>
    public required IReadOnlyList<BlackLevelFrame> Frames { get; init; }

    /// <summary>Jitter s of the frames, ADU.</summary>
    public double Jitter { get; private init; }

    /// <summary>Degrees of freedom of the jitter.</summary>
    public double JitterFreedom { get; private init; }

    /// <summary>Scatter τ of the sets, ADU.</summary>
    public double SetScatter { get; private init; }

    /// <summary>What jitter and noise leave in the mean of a usual set, ADU: the scatter is seen through it.</summary>
    public double SetNoise { get; private init; }

    /// <summary>Degrees of freedom behind it; 0 when there are too few sets.</summary>
    public int SetFreedom { get; private init; }

    /// <summary>Level of each frame minus the fit, ADU.</summary>
    public required double[] Residuals { get; init; }

    /// <summary>Fits; null with fewer than 4 frames or no degrees of freedom.</summary>
    public static BlackLevelFit? Fit(IReadOnlyList<BlackLevelFrame> frames)
    {
        if (frames.Count < 4)
            return null;
        BlackLevelDesign design = BlackLevelDesign.Of(frames);
        if (frames.Count <= design.Columns.Count)
            return null;
        int[][] sets = [.. Enumerable.Range(0, frames.Count).GroupBy(i => frames[i].Set).Select(g => g.ToArray())];
        double[] levels = [.. frames.Select(f => f.Level)];
        LinearFit first = Weighted(design, frames, levels, sets, FrameScatter.Rough(frames, levels), 0);
        (double jitter, double freedom, double readings) = FrameScatter.Measure(
            frames,
            ResidualsOf(first, design, levels),
            frames.Count - design.Columns.Count
        );
        frames = [.. frames.Select(f => f.WithReadings(readings))];
        (double scatter, int setFreedom) = SetScatterOf(design, frames, levels, sets, jitter, first);
        LinearFit fit = Weighted(design, frames, levels, sets, jitter, scatter);
        return new(design, fit, scatter > 0 ? Weighted(design, frames, levels, sets, jitter, 0) : fit)
        {
            Frames = frames,
            Jitter = jitter,
            JitterFreedom = freedom,
            SetScatter = scatter,
            SetNoise = OrderStatistics.Median([
                .. sets.Select(s =>
                    Math.Sqrt((jitter * jitter + s.Average(i => frames[i].Noise * frames[i].Noise)) / s.Length)
                ),
            ]),
            SetFreedom = setFreedom,
            Residuals = ResidualsOf(fit, design, levels),
        };
    }

    /// <summary>
    /// A term with its uncertainty, widened for the few frames and sets behind the scatters; null when the frames do
    /// not separate it.
    /// </summary>
    public Measurement? Term(string name, string unit, string method)
    {
        int j = Index(name);
        return j < 0 || !Design.Tells(name) ? null : new(fit.Parameters[j], Doubt(j), unit, Residuals.Length, method);
    }

    /// <summary>Value of a term, separable or not; 0 when it is not in the fit.</summary>
    public double Value(string name) => Index(name) is >= 0 and int j ? fit.Parameters[j] : 0;

    /// <summary>Effective degrees of freedom of the uncertainty of a term (Welch and Satterthwaite).</summary>
    public double Freedom(string name) => Index(name) is >= 0 and int j ? Freedom(j) : 1;

    private int Index(string name) => Design.Names.ToList().IndexOf(name);

    private double Freedom(int j)
    {
        double frames = withoutScatter.Uncertainty(j),
            sets = Math.Sqrt(Math.Max(0, fit.Covariance[j, j] - frames * frames));
        return ErrorPropagation.EffectiveDegreesOfFreedom(
            [frames, sets],
            [JitterFreedom, SetFreedom > 0 ? SetFreedom : double.PositiveInfinity]
        );
    }

    private double Doubt(int j) => fit.Uncertainty(j) * Probability.CoverageWidening(Freedom(j));

    private static LinearFit Weighted(
        BlackLevelDesign design,
        IReadOnlyList<BlackLevelFrame> frames,
        double[] levels,
        int[][] sets,
        double jitter,
        double scatter
    )
    {
        double[] uncertainties = new double[frames.Count],
            shares = new double[frames.Count];
        foreach (int[] set in sets)
        {
            double own = Math.Sqrt(jitter * jitter + set.Average(i => frames[i].Noise * frames[i].Noise));
            foreach (int i in set)
                (uncertainties[i], shares[i]) = (own, 1 - own / Math.Sqrt(own * own + set.Length * scatter * scatter));
        }
        double[] Reduced(double[] values)
        {
            double[] reduced = new double[values.Length];
            foreach (int[] set in sets)
            {
                double mean = set.Average(i => values[i]);
                foreach (int i in set)
                    reduced[i] = values[i] - shares[i] * mean;
            }
            return reduced;
        }
        return LinearLeastSquares.Fit([.. design.Columns.Select(Reduced)], Reduced(levels), uncertainties);
    }

    private static double[] ResidualsOf(LinearFit fit, BlackLevelDesign design, double[] levels) =>
        [.. levels.Select((l, i) => l - design.Columns.Select((c, j) => c[i] * fit.Parameters[j]).Sum())];

    /// <summary>τ at which χ² of the set means about their fit equals its degrees of freedom.</summary>
    private static (double Scatter, int Freedom) SetScatterOf(
        BlackLevelDesign design,
        IReadOnlyList<BlackLevelFrame> frames,
        double[] levels,
        int[][] sets,
        double jitter,
        LinearFit first
    )
    {
        // The offset of a first frame is known from within the sets.
        int apart = design.Names.ToList().IndexOf(BlackLevelDesign.First);
        double[][] columns =
        [
            .. design.Columns.Where((_, j) => j != apart).Select(c => sets.Select(s => s.Average(i => c[i])).ToArray()),
        ];
        int freedom = sets.Length - columns.Length;
        if (freedom < 1)
            return (0, 0);
        double[] means =
        [
            .. sets.Select(s =>
                s.Average(i => levels[i] - (apart < 0 ? 0 : first.Parameters[apart] * design.Columns[apart][i]))
            ),
        ];
        double[] own =
        [
            .. sets.Select(s => (jitter * jitter + s.Average(i => frames[i].Noise * frames[i].Noise)) / s.Length),
        ];
        double ChiSquared(double scatter) =>
            LinearLeastSquares.Fit(columns, means, [.. own.Select(v => Math.Sqrt(v + scatter * scatter))]).ChiSquared;
        try
        {
            if (ChiSquared(0) <= freedom)
                return (0, freedom);
            double high = Math.Sqrt(own.Max());
            while (ChiSquared(high) > freedom)
                high *= 2;
            return (Brent.FindRoot(s => ChiSquared(s) - freedom, 0, high, 1e-9 * high, 100), freedom);
        }
        catch (ArgumentException)
        {
            return (0, 0); // the set means alone cannot determine all the terms
        }
    }
}
