using MathNet.Numerics.Distributions;
using SensorProfile.PhotonTransfer;
using SensorProfile.Profiles.Response;
using Xunit.Abstractions;

namespace SensorProfile.Tests.PhotonTransfer;

public sealed class GainFitTests(ITestOutputHelper output)
{
    private const long Pixels = 4096;

    [Fact]
    public void ExactPointsGiveTheirSlopeAndIntercept()
    {
        // EMVA 1288, σ² − σ²_dark = K(μ − μ_dark): K 0.5 ADU/e-, read noise 3 e- (2.25 ADU²); derived algebra.
        FlatPairPoint[] points = [.. new[] { 500.0, 5000, 15000 }.Select(signal => Point(signal, 2.25 + 0.5 * signal))];
        GainFitResult fit = GainFit.Fit(points, 2.25, 0.05, saturationAdu: null)!;
        Assert.Equal(2.0, fit.Gain.Value, 1e-9);
        Assert.Equal(0.5, fit.Slope.Value, 1e-9);
        Assert.Equal(0.0, fit.Intercept!.Value, 1e-6);
        Assert.Equal(GainForm.Straight, fit.Selected);
    }

    [Fact]
    public void TheBrighterFatterEffectDoesNotBiasTheGain()
    {
        // Closed form of Astier et al. 2019 (A&A 629, A36) with a00 = -2.4e-6 /e-, 2 e-/ADU; a straight line is
        // wrong by up to 15 % at 30000 ADU.
        // Up to 10000 ADU the next term of the expansion, 2/3·(aμ)² = 0.15 %, is what is left.
        FlatPairPoint[] points =
        [
            .. Enumerable.Range(1, 12).Select(i => Point(830.0 * i, AstierVariance(830.0 * i) + 4, pixels: 9_000_000)),
        ];
        GainFitResult fit = GainFit.Fit(points, 4, 4 * Math.Sqrt(2 / 9e6), saturationAdu: null)!;
        Assert.Equal(GainForm.Curved, fit.Selected);
        Assert.Equal(2.0, fit.Gain.Value, 0.003);
        Assert.InRange(fit.Curvature!.Value, -4.9e-6, -4.4e-6); // a = a00 · gain = -4.8e-6 per ADU
        Assert.True(fit.GainStraight.Value > 2.02);
    }

    /// <summary>
    /// The stated error of the curvature against the scatter of 2000 fits of a strong one. Slope and curvature are
    /// strongly correlated: with the sign of their covariance turned round the error comes out 20 % off.
    /// </summary>
    [Fact]
    public void TheErrorOfTheCurvatureIsItsScatter()
    {
        const int fits = 2000;
        var random = new Random(11);
        double[] signals = [.. Enumerable.Range(1, 10).Select(i => 3000.0 * i)];
        List<double> values = [],
            errors = [];
        for (int i = 0; i < fits; i++)
        {
            FlatPairPoint[] points =
            [
                .. signals.Select(s =>
                {
                    double variance = 4 + 0.5 * s * (1 - 1.2e-5 * s);
                    return Point(s, variance * (1 + Normal.Sample(random, 0, 1) * Math.Sqrt(2.0 / (Pixels - 1))));
                }),
            ];
            Measurement curvature = GainFit.Fit(points, 4, 0.09, saturationAdu: null)!.Curvature!;
            values.Add(curvature.Value);
            errors.Add(curvature.StandardUncertainty);
        }
        double mean = values.Average(),
            scatter = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (fits - 1));
        // the scatter of 2000 values is known to 1.6 %; fits that p < 1 % widens add 1 %
        output.WriteLine($"{errors.Average() / scatter:F3}");
        Assert.InRange(errors.Average() / scatter, 0.94, 1.07);
    }

    [Fact]
    public void OneLevelStillGivesAGain()
    {
        GainFitResult fit = GainFit.Fit(
            [Point(20000, 92 + 4.25 * 20000), Point(20100, 92 + 4.25 * 20100)],
            92,
            0.4,
            null
        )!;
        Assert.Equal(1 / 4.25, fit.Gain.Value, 1e-9);
        Assert.Equal(1, fit.Levels);
        Assert.Null(fit.Curvature);
        Assert.Null(fit.Intercept);
    }

    [Theory, InlineData(1), InlineData(3)]
    public void FewLevelsDoNotHideACurvature(int levels)
    {
        // Flats near the top of the range only, of a sensor whose variance there is 4.7 % too small (Astier et al.
        // 2019: a =
        // -4.8e-6 per ADU): a straight line is off by as much.
        FlatPairPoint[] points =
        [
            .. Enumerable
                .Range(0, levels)
                .Select(i => Point(10000.0 - 1000 * i, AstierVariance(10000.0 - 1000 * i) + 4, pixels: 9_000_000)),
        ];
        GainFitResult fit = GainFit.Fit(points, 4, 4 * Math.Sqrt(2 / 9e6), saturationAdu: null)!;
        Assert.InRange(Math.Abs(fit.Gain.Value - 2) / fit.Gain.StandardUncertainty, 0, 1.5);
        // three have a bad χ², which widens the straight line
        if (levels == 1)
            Assert.True(Math.Abs(fit.GainStraight.Value - 2) > 10 * fit.GainStraight.StandardUncertainty);
        // One level: 5 % of the variance at the top of the range. Three levels of 9 million pixels tell the curvature,
        // to 0.3 % of the gain by the same least squares in numpy.
        Assert.Equal(
            levels == 1 ? 0.05 : 0.0029,
            fit.Gain.StandardUncertainty / fit.Gain.Value,
            levels == 1 ? 0.001 : 0.0002
        );
    }

    [Fact]
    public void PointsBeyondSeventyPercentOfSaturationStayOut()
    {
        FlatPairPoint[] points =
        [
            .. Enumerable.Range(1, 10).Select(i => Point(1000.0 * i, 4 + (i > 7 ? 100 : 0.5 * 1000 * i))),
        ];
        GainFitResult fit = GainFit.Fit(points, 4, 0.1, saturationAdu: 10000)!;
        Assert.Equal([true, true, true, true, true, true, true, false, false, false], fit.Used);
        Assert.Equal(2.0, fit.Gain.Value, 1e-9);
    }

    [Fact]
    public void PairsWhoseBrightestPartIsFullStayOut()
    {
        // A lens brightens the middle: it is full, without noise, while the frame as a whole is not saturated. Pixels
        // that are stuck at the top code in all frames do not count.
        FlatPairPoint[] points =
        [
            .. Enumerable
                .Range(1, 8)
                .Select(i =>
                    Point(1000.0 * i, 4 + 0.5 * 1000 * i * (i == 8 ? 0.9 : 1)) with
                    {
                        TopCodeShare = i == 8 ? 0.013 : 0.003,
                    }
                ),
        ];
        GainFitResult fit = GainFit.Fit(points, 4, 0.1, saturationAdu: null)!;
        Assert.Equal([true, true, true, true, true, true, true, false], fit.Used);
        Assert.Equal(2.0, fit.Gain.Value, 1e-9);
    }

    [Fact]
    public void WithoutLightThereIsNoGain() => Assert.Null(GainFit.Fit([Point(-3, 4)], 4, 0.1, null));

    [Theory]
    [InlineData(0, 1000)]
    [InlineData(-1.2e-6, 1000)] // a curvature of the size the noise can just hide
    [InlineData(-6e-6, 1000)]
    [InlineData(0, 100_000)]
    [InlineData(-1.2e-6, 100_000)]
    public void NinetyFivePercentIntervalsHoldTheTruth(double curvature, long pixels)
    {
        const double truth = 1.3;
        const int cameras = 2000;
        var random = new Random(20261125);
        double sum = 0;
        int held = 0;
        for (int camera = 0; camera < cameras; camera++)
        {
            FlatPairPoint[] points =
            [
                .. Enumerable
                    .Range(1, 10)
                    .Select(i =>
                    {
                        double signal = 4000.0 * i,
                            variance = 5 + signal / truth * (1 + curvature * signal);
                        return Point(signal, Observed(random, variance, pixels), pixels);
                    }),
            ];
            GainFitResult fit = GainFit.Fit(
                points,
                Observed(random, 5, pixels * 8),
                5 * Math.Sqrt(2.0 / (pixels * 8 - 1)),
                saturationAdu: 60000
            )!;
            double z = (fit.Gain.Value - truth) / fit.Gain.StandardUncertainty;
            sum += z;
            if (Math.Abs(z) < 1.96)
                held++;
        }
        double percent = 100.0 * held / cameras;
        output.WriteLine(
            $"curvature {curvature}, {pixels} px: 95 % intervals held the truth in {percent:F1} %, mean z {sum / cameras:F3}"
        );
        // three counting errors of 2000 are 1.5 %; weighing models in makes the interval a little wide
        Assert.InRange(percent, 92, 98.5);
        if (curvature == 0)
            Assert.InRange(sum / cameras, -0.1, 0.1);
    }

    private static double Observed(Random random, double variance, long pixels) =>
        variance * Gamma.Sample(random, (pixels - 1) / 2.0, (pixels - 1) / 2.0);

    internal static double AstierVariance(double signalAdu)
    {
        const double a00 = -2.4e-6,
            gain = 2;
        return (Math.Exp(2 * a00 * signalAdu * gain) - 1) / (2 * gain * gain * a00);
    }

    internal static FlatPairPoint Point(double signal, double variance, long pixels = Pixels) =>
        new()
        {
            Signal = signal,
            MeanSignal = signal,
            Variance = variance,
            Pixels = pixels,
        };
}
