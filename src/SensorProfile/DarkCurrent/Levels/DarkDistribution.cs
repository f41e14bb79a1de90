using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// Distribution of the dark rates of the pixels of one channel at one temperature: level of every block, spread and
/// skew within the blocks, and outliers.
/// </summary>
/// <remarks>
/// The rate of a pixel is the level of its block plus its own deviation. The moments of the deviations come from two
/// halves a, b of the frames, whose noise is independent: variance = mean(a·b), third moment = ½·mean(a²b + ab²) minus
/// the part that Poisson noise adds because it grows with the rate, variance/(n·t) for a half of n frames of t seconds.
/// Pixels beyond 4 robust standard deviations are kept individually.
/// </remarks>
internal sealed record DarkDistribution
{
    private const double Clip = 4;
    private const int Rounds = 6;

    /// <summary>Levels of equal parts of the blocks, e-/px/s, ascending.</summary>
    public required double[] Levels { get; init; }

    /// <summary>Departures from the level of their block of the pixels far off, e-/px/s, ascending.</summary>
    public required double[] Far { get; init; }

    /// <summary>Number of pixels examined.</summary>
    public required long Pixels { get; init; }

    /// <summary>Variance of the deviations of all other pixels, (e-/px/s)²; noise may make it negative.</summary>
    public required double Variance { get; init; }

    /// <summary>Standard uncertainty of the variance due to the noise of the frames.</summary>
    public required double VarianceUncertainty { get; init; }

    /// <summary>Third central moment of the deviations, (e-/px/s)³.</summary>
    public required double ThirdMoment { get; init; }

    /// <summary>Standard uncertainty of the third moment due to the noise of the frames.</summary>
    public required double ThirdMomentUncertainty { get; init; }

    /// <summary>Median over the levels, e-/px/s.</summary>
    public double Centre { get; private init; }

    /// <summary>Measures the distribution.</summary>
    /// <param name="signals">Signals of one channel.</param> <param name="seconds">Exposure, s.</param>
    /// <param name="pedestalVariance">Variance of the pedestal map due to its own noise, e-²; both halves share this
    /// noise.</param>
    public static DarkDistribution Measure(HalvedSignals signals, double seconds, double pedestalVariance)
    {
        int blocks = signals.First.Length,
            a = signals.FirstFrames,
            b = signals.SecondFrames;
        double[][] together =
        [
            .. Enumerable
                .Range(0, blocks)
                .Select(k =>
                    signals
                        .First[k]
                        .Select((x, i) => ((double)a * x + (double)b * signals.Second[k][i]) / (a + b))
                        .ToArray()
                ),
        ];
        var surface = new BlockSurface((int)Math.Round(Math.Sqrt(together[0].Length)));
        double[][] levels =
        [
            .. together.Select(values => Enumerable.Repeat(OrderStatistics.Median(values), values.Length).ToArray()),
        ];
        double Reach() =>
            Clip
            * OrderStatistics.Median([
                .. together.Select(
                    (values, k) => OrderStatistics.MadSigma([.. values.Zip(levels[k], (v, l) => v - l)])
                ),
            ]);
        double reach = Reach();
        for (int round = 0; round < Rounds; round++)
        {
            for (int k = 0; k < blocks; k++)
                surface.Approach(together[k], levels[k], reach);
            if (round == Rounds / 2)
                reach = Reach();
        }

        var sums = new MomentSums();
        List<double> far = [];
        for (int k = 0; k < blocks; k++)
        for (int i = 0; i < together[k].Length; i++)
        {
            double level = levels[k][i],
                off = together[k][i] - level;
            if (Math.Abs(off) < reach)
                sums.Add(signals.First[k][i] - level, signals.Second[k][i] - level);
            else
                far.Add(off / seconds);
        }
        double used = 1 - (double)BlockSurface.Terms / together[0].Length, // what the surfaces take of the spread
            variance = sums.Covariance / used - pedestalVariance;
        double[] parts = [.. levels.SelectMany(surface.Parts).Order()];
        return new()
        {
            Levels = [.. parts.Select(l => l / seconds)],
            Far = [.. far.Order()],
            Pixels = blocks * (long)together[0].Length,
            Variance = variance / (seconds * seconds),
            VarianceUncertainty = sums.CovarianceUncertainty / (seconds * seconds),
            // e-: Poisson noise of a half of n frames has variance signal/n
            ThirdMoment = (sums.Third - variance * (1.0 / a + 1.0 / b) / 2) / Math.Pow(seconds, 3),
            ThirdMomentUncertainty = sums.ThirdUncertainty / Math.Pow(seconds, 3),
            Centre = parts[parts.Length / 2] / seconds,
        };
    }

    /// <summary>Mixed moments of the two halves about the levels of their blocks.</summary>
    private sealed class MomentSums
    {
        private long n;
        private double sumA,
            sumB,
            squareA,
            squareB,
            product,
            third;

        public void Add(double a, double b)
        {
            n++;
            (sumA, sumB) = (sumA + a, sumB + b);
            (squareA, squareB, product) = (squareA + a * a, squareB + b * b, product + a * b);
            third += (a * a * b + a * b * b) / 2;
        }

        public double Covariance => product / n - sumA / n * (sumB / n);

        public double CovarianceUncertainty => Math.Sqrt(squareA / n * (squareB / n) / n);

        // The means are 0 except for an overall difference between the halves (a jumping pedestal), removed to first
        // order.
        public double Third =>
            third / n - sumA / n * (product / n + squareB / (2 * n)) - sumB / n * (product / n + squareA / (2 * n));

        // For independent normal noise: Var(a²b) = 3·σa⁴·σb², Var(ab²) = 3·σa²·σb⁴, and the two are uncorrelated.
        public double ThirdUncertainty =>
            Math.Sqrt(3 * (squareA / n) * (squareB / n) * (squareA / n + squareB / n) / n) / 2;
    }
}
