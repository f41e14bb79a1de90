using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.NoiseModel;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.Characterisation;
using SensorProfile.Tests.Prediction;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Decisions.ComputedDarks;

/// <summary>
/// Computed master darks against the true dark signal, at a temperature and an exposure that were never taken.
/// </summary>
public sealed class ComputedDarkTests(ITestOutputHelper output)
{
    public static TheoryData<string> Cameras => [.. Descriptions.Keys];

    private static Dictionary<string, CameraDescription> Descriptions =>
        new()
        {
            ["mono"] = Camera(),
            ["colour"] = Camera() with { ColourFilter = "RGGB" },
            ["two-process"] = Camera() with
            {
                DarkCurrent = new DarkCurrentParameters
                {
                    RateAtReference = 0.05,
                    ReferenceTemperature = -10,
                    DiffusionShare = 0.4,
                },
            },
            ["few-bias-frames"] = Camera() with
            {
                Shots = Nights.Full(48000, [-20, -15, -10, -5, 0], [60, 300], darks: 5, bias: 6),
            },
        };

    [Theory, MemberData(nameof(Cameras))]
    public void TheTrueDarkLiesWithinTheStatedUncertaintyInEveryKindOfPixel(string name)
    {
        using var night = new ComputedNight(Descriptions[name]);
        foreach ((double celsius, double seconds) in new[] { (-12.5, 200.0), (-3.0, 90.0), (-18.0, 300.0) })
        {
            DarkPredictionAnswer answer = night.Compute(celsius, seconds);
            Assert.Equal(PredictionVerdict.Computed, answer.Verdict);
            double[] truth = night.TrueDark(celsius, seconds);
            string[] kinds = night.TrueKinds(celsius, seconds);
            ReadOnlyMemory<float> values = answer.Master!.Values,
                doubts = answer.Master.Uncertainty;
            foreach (string kind in new[] { "typical", "hot", "glow" })
            {
                double[] z =
                [
                    .. Enumerable
                        .Range(0, truth.Length)
                        .Where(i => kinds[i] == kind)
                        .Select(i => (values.Span[i] - truth[i]) / doubts.Span[i]),
                ];
                double coverage = z.Count(v => Math.Abs(v) < 1.96) / (double)z.Length;
                output.WriteLine(
                    $"{name} {celsius} °C {seconds} s {kind}: {z.Length} px, coverage {coverage:F3}, mean z {z.Average():F2}"
                );
                // 90 … 99 % as the method promises; counting 300 hot pixels adds 2·√(0.9·0.1/300) = 3.5 % at the lower
                // end.
                double open = 2 * Math.Sqrt(0.09 / z.Length);
                Assert.InRange(coverage, 0.90 - open, 0.99 + open);
            }
        }
    }

    [Fact]
    public void TheTrialsOfASoundCameraPassAndAgreeWithTheTruthOnScaling()
    {
        using var sameLaw = new ComputedNight(Camera(activation: 1, spread: 0) with { Glow = [] });
        output.WriteLine(
            $"{sameLaw.Trials.ByExposure}\n{sameLaw.Trials.ByTemperature}\n"
                + $"{sameLaw.Trials.ScalingByExposure}\n{sameLaw.Trials.ScalingByTemperature}"
        );
        Assert.True(sameLaw.Trials.Passed);
        Assert.True(sameLaw.Trials.ScalingByExposure!.Passed);
        Assert.True(sameLaw.Trials.ScalingByTemperature!.Passed);
        using var ownLaws = new ComputedNight(Camera(activation: 0.8, spread: 0.08) with { Glow = [] });
        Assert.True(ownLaws.Trials.Passed);
        Assert.True(ownLaws.Trials.ScalingByExposure!.Passed);
        Assert.False(ownLaws.Trials.ScalingByTemperature!.Passed);
        Assert.Equal("hot", ownLaws.Trials.ScalingByTemperature.FailedBy);
        using var glowing = new ComputedNight(Camera(activation: 1, spread: 0)); // glow doubles every 11 °C
        Assert.True(glowing.Trials.Passed);
        Assert.Equal("glow", glowing.Trials.ScalingByTemperature!.FailedBy);
        Assert.False(ownLaws.Trials.ScalingByTemperature.Passed);
    }

    [Fact]
    public void ACameraWhosePixelsDriftBetweenSetsIsRefused()
    {
        // Every hot pixel comes and goes with dwell times of hours: steady within a set, another pixel in the next.
        using var night = new ComputedNight(
            Camera() with
            {
                HotPixels = new HotPixels(),
                TelegraphPixels = new TelegraphPixels
                {
                    Share = 0.02,
                    Rate = 3,
                    AmplitudeSpread = 0.3,
                    DwellHigh = 6000,
                    DwellLow = 6000,
                },
            }
        );
        Assert.False(night.Trials.Passed);
        var refusal = Assert.Throws<DecisionRefusedException>(() => night.Compute(-12, 200));
        Assert.Equal("prediction-failed", refusal.Code);
        Assert.StartsWith("Take real darks: ", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ACameraThatPinsItsLevelKeepsTheLevelOfTheBiasAndShowsThePattern()
    {
        using var night = new ComputedNight(Camera() with { ClampBlack = true, Glow = [] });
        DarkPredictionAnswer answer = night.Compute(-7, 200);
        Assert.Contains(answer.Findings, f => f.Code == "level-pinned");
        double[] truth = night.TrueDark(-7, 200);
        double[] difference =
        [
            .. Enumerable.Range(0, truth.Length).Select(i => answer.Master!.Values.Span[i] - truth[i]),
        ];
        double offset = SensorProfile.Fitting.Statistics.OrderStatistics.Median(difference),
            signal = 0.05 * Math.Pow(2, 3 / 6.2) * 200 / 0.8;
        // the dark signal is missing from the level …
        Assert.InRange(offset, -signal - 1, -signal + 1);
        double coverage =
            difference.Select((d, i) => Math.Abs(d - offset) < 1.96 * answer.Master!.Uncertainty.Span[i]).Count(w => w)
            / (double)truth.Length;
        Assert.InRange(coverage, 0.90, 0.99); // … and the pattern is there
    }

    internal static CameraDescription Camera(double activation = 0.9, double spread = 0.06) =>
        new()
        {
            Name = "Tarn-9M",
            Serial = 11,
            Width = 260,
            Height = 200,
            Gain = 0.8,
            ReadNoise = 1.6,
            FullWell = 48000,
            BiasLevel = 600,
            BiasPattern = new BiasPattern { Pixel = 1.5, Column = 0.5 },
            Pedestal = new Pedestal { Jitter = 0.1 },
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.05,
                ReferenceTemperature = -10,
                DoublingTemperature = 6.2,
            },
            DarkNonuniformity = 0.1,
            HotPixels = new HotPixels
            {
                Share = 0.01,
                Distribution = new HotPixelDistribution { Minimum = 1, Maximum = 30 },
                Activation = activation,
                ActivationSpread = spread,
            },
            Glow =
            [
                new Glow
                {
                    Shape = GlowShape.RightEdge,
                    Rate = 0.4,
                    Width = 20,
                    Y = 90,
                    Length = 50,
                    DoublingTemperature = 11,
                },
            ],
            ResponseNonuniformity = 0.006,
            Shots = Nights.Full(48000, [-20, -15, -10, -5, 0], [30, 120, 300]),
        };
}
