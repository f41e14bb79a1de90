using MathNet.Numerics.RootFinding;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Jitter of the level from the differences of consecutive frames, leaving out steps.</summary>
internal static class FrameScatter
{
    /// <summary>A difference beyond this many standard deviations is a step, not jitter.</summary>
    public const double StepSigmas = 6;

    private const int MinPairs = 3;
    private const int MinPairsForReadings = 20;
    private const double MaxReadings = 4; // twice the uncertainty that is assumed of a reading
    private const int Rounds = 30;
    private const double MaxSteps = 0.05; // share of the pairs: with more, steps are simply how this level jitters

    /// <summary>A first estimate, before any fit.</summary>
    public static double Rough(IReadOnlyList<BlackLevelFrame> frames, double[] levels)
    {
        double[] differences = [.. Pairs(frames).Select(i => Math.Abs(levels[i] - levels[i - 1]))];
        return differences.Length == 0
            ? frames.Max(f => f.Noise)
            : Math.Max(OrderStatistics.Median(differences), frames.Min(f => f.Noise));
    }

    /// <summary>
    /// Jitter s and the degrees of freedom behind it: of n overlapping differences about 2n/3 (von Neumann 1941). With
    /// too few pairs it comes from the residuals of the fit.
    /// </summary>
    /// <remarks>
    /// Maximum likelihood, Σ(d² − v)/v² = 0 with v = 2s² + the noise of both frames: what a frame says of the jitter counts by
    /// its own noise, so that warm darks, whose reading is in doubt by more than the jitter, do not speak for cold ones. Degrees
    /// of freedom by Kish (1965, Survey Sampling): (Σ1/v)²/Σ(1/v²) of n equal ones.
    /// <para>
    /// What the temperature readings add to the levels of warm darks was assumed, not measured: where there are enough pairs
    /// its variance is fitted beside the jitter's (weighted least squares of d² on 2s² and on the assumed one, weights 1/v²).
    /// Assumed too large, it would take from the jitter.
    /// </para>
    /// </remarks>
    /// <param name="frames">Frames.</param>
    /// <param name="residuals">Level less fit, ADU.</param>
    /// <param name="fitFreedom">Degrees of freedom of the fit.</param>
    public static (double Jitter, double Freedom, double Readings) Measure(
        IReadOnlyList<BlackLevelFrame> frames,
        double[] residuals,
        int fitFreedom
    )
    {
        int[] pairs = Pairs(frames);
        if (pairs.Length < MinPairs)
            return (
                Solve(
                    j => residuals.Select((r, i) => r * r / (j * j + Square(frames[i].Noise))).Sum() - fitFreedom,
                    residuals.Max(Math.Abs)
                ),
                fitFreedom,
                1
            );
        int[] steady = [.. pairs.Except(Steps(frames, residuals))];
        double Variance(double j, int i) => 2 * j * j + Square(frames[i].Noise) + Square(frames[i - 1].Noise);
        double Excess(double j) =>
            steady.Sum(i => (Square(residuals[i] - residuals[i - 1]) - Variance(j, i)) / Square(Variance(j, i)));
        double jitter = Solve(Excess, steady.Max(i => Math.Abs(residuals[i] - residuals[i - 1]))),
            alike = Square(steady.Sum(i => 1 / Variance(jitter, i))) / steady.Sum(i => 1 / Square(Variance(jitter, i)));
        return WithReadings(frames, residuals, steady, jitter) ?? (jitter, Math.Max(1, 2 * alike / 3), 1);
    }

    /// <summary>Jitter and variance of the readings together; null where the pairs do not tell them apart.</summary>
    private static (double Jitter, double Freedom, double Readings)? WithReadings(
        IReadOnlyList<BlackLevelFrame> frames,
        double[] residuals,
        int[] steady,
        double first
    )
    {
        if (steady.Length < MinPairsForReadings || steady.All(i => frames[i].ReadingNoise == 0))
            return null;
        double[] readings =
        [
            .. steady.Select(i => Square(frames[i].ReadingNoise) + Square(frames[i - 1].ReadingNoise)),
        ];
        double[] pixels =
        [
            .. steady.Select((i, k) => Square(frames[i].Noise) + Square(frames[i - 1].Noise) - readings[k]),
        ];
        double[] beyond = [.. steady.Select((i, k) => Square(residuals[i] - residuals[i - 1]) - pixels[k])];
        (double twice, double factor, double variance) = (2 * first * first, 1, 0);
        for (int round = 0; round < Rounds; round++)
        {
            double w = 0,
                wr = 0,
                wrr = 0,
                wy = 0,
                wry = 0;
            for (int k = 0; k < steady.Length; k++)
            {
                double weight = 1 / Square(twice + pixels[k] + (factor * readings[k])),
                    r = readings[k];
                (w, wr, wrr) = (w + weight, wr + (weight * r), wrr + (weight * r * r));
                (wy, wry) = (wy + (weight * beyond[k]), wry + (weight * r * beyond[k]));
            }
            double determinant = (w * wrr) - (wr * wr);
            if (!(determinant > 1e-6 * w * wrr))
                return null;
            double free = ((w * wry) - (wr * wy)) / determinant;
            factor = Math.Clamp(free, 0, MaxReadings);
            twice = Math.Max(0, (wy - (factor * wr)) / w);
            // squares of normal differences vary by 2v², and overlapping ones count two thirds
            variance = 3 * wrr / determinant;
        }
        double jitter = Math.Sqrt(twice / 2),
            noise = frames.Min(f => Square(f.WithReadings(factor).Noise));
        return (jitter, Math.Max(1, 2 * Square((twice / 2) + noise) / (variance / 4)), factor);
    }

    /// <summary>
    /// Frames before which the level stepped; none when steps are so frequent that they are the jitter itself.
    /// </summary>
    public static IReadOnlyList<int> Steps(IReadOnlyList<BlackLevelFrame> frames, double[] residuals)
    {
        int[] pairs = Pairs(frames);
        if (pairs.Length < MinPairs)
            return [];
        double[] differences = [.. pairs.Select(i => Math.Abs(residuals[i] - residuals[i - 1]))];
        double robust = OrderStatistics.MadToSigma * OrderStatistics.Median(differences); // differences are centred on 0
        bool Stands(int i) =>
            Math.Abs(residuals[i] - residuals[i - 1])
            > StepSigmas * Math.Sqrt(Math.Max(robust * robust, Square(frames[i].Noise) + Square(frames[i - 1].Noise)));
        int[] steps = [.. pairs.Where(Stands)];
        return steps.Length > Math.Max(2, MaxSteps * pairs.Length) ? [] : steps;
    }

    /// <summary>Indices of frames whose predecessor belongs to the same set and is not separated by a pause.</summary>
    private static int[] Pairs(IReadOnlyList<BlackLevelFrame> frames) =>
        [
            .. Enumerable
                .Range(1, Math.Max(0, frames.Count - 1))
                .Where(i => frames[i].Set == frames[i - 1].Set && !frames[i].First && !frames[i - 1].First),
        ];

    private static double Solve(Func<double, double> excess, double largest)
    {
        if (!(largest > 0) || excess(0) <= 0)
            return 0;
        double high = largest;
        while (excess(high) > 0)
            high *= 2;
        return Brent.FindRoot(excess, 0, high, 1e-9 * high, 100);
    }

    private static double Square(double x) => x * x;
}
