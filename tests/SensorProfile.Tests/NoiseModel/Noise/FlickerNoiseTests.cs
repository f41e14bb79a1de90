using SensorProfile.Decisions.Setpoint;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class FlickerNoiseTests
{
    private const int Width = 100,
        Height = 80,
        Lights = 12;

    [Theory] // read-out steps and thermal ones, dwell times far below, about and far above the exposure
    [InlineData(12, 0, 2, 3)]
    [InlineData(12, 0, 120, 200)]
    [InlineData(12, 0, 30000, 50000)]
    [InlineData(0, 0.3, 2, 3)]
    [InlineData(0, 0.3, 60, 90)]
    [InlineData(0, 0.3, 900, 500)]
    [InlineData(0, 0.3, 30000, 50000)]
    public void TheNoiseOfTheSimulatorsPixelsIsThatOfTheBudget(double amplitude, double rate, double high, double low)
    {
        // Every pixel flickers, independently: variance over 8000 pixels of the mean of 12 lights (and of one), less
        // that of a camera without flicker. A variance of 8000 values of two levels is known to 1.6 % or better; the
        // sum
        // with the plain noise, a fifth of it or less, is known to about 2 %. Agreement asked for: 8 %.
        const double Exposure = 60;
        var telegraph = new TelegraphPixels
        {
            Share = 1,
            Amplitude = amplitude,
            Rate = rate,
            DwellHigh = high,
            DwellLow = low,
        };
        (double one, double mean) = Variances(telegraph, Exposure);
        (double plainOne, double plainMean) = Variances(new TelegraphPixels(), Exposure);
        // the mean thermal signal has shot noise of its own
        double share = high / (high + low),
            memory = high * low / (high + low),
            shot = rate * Exposure * share;
        var pixels = new FlickerClass(
            rate > 0,
            1,
            new Measurement(
                (rate > 0 ? rate : amplitude) * Math.Sqrt(share * (1 - share)),
                0,
                rate > 0 ? "e-/px/s" : "e-",
                1,
                "true value"
            ),
            memory
        );
        Assert.InRange(FlickerNoise.OfLight(pixels, 1, Exposure) / (one - plainOne - shot), 0.92, 1.08);
        double pause = Interval(telegraph, Exposure);
        Assert.InRange(
            FlickerNoise.OfMean(pixels, 1, Exposure, Lights, pause) / (mean - plainMean - shot / Lights),
            0.92,
            1.08
        );
    }

    [Fact]
    public void ShortDwellsAverageAndLongOnesStay()
    {
        FlickerClass Of(double memory) => new(false, 1, new Measurement(6, 0, "e-", 1, "true value"), memory);
        Assert.Equal(36.0 / 40, FlickerNoise.OfMean(Of(0.1), 1, 300, 40, 300), 1e-9);
        Assert.Equal(36, FlickerNoise.OfMean(Of(1e9), 1, 300, 40, 300), 1e-2);
        double before = 0;
        foreach (double memory in new[] { 1.0, 30, 300, 3000, 30000 })
        {
            double now = FlickerNoise.OfMean(Of(memory), 1, 300, 40, 300);
            Assert.True(now >= before);
            before = now;
        }
    }

    [Fact]
    public void ThermalStepsOfUnknownMemoryKeepTheirStateThroughAnExposure()
    {
        var pixels = new FlickerClass(true, 1, new Measurement(0.1, 0, "e-/px/s", 1, "true value"), null);
        Assert.Equal(Math.Pow(0.1 * 2 * 300, 2), FlickerNoise.OfLight(pixels, 2, 300), 1e-9);
        Assert.Equal(Math.Pow(0.1 * 2 * 300, 2) / 40, FlickerNoise.OfMean(pixels, 2, 300, 40, 300), 1e-9);
    }

    [Fact]
    public void TheBudgetHoldsThemWhereTheyMatter()
    {
        // 2 % of the pixels scatter by 12 e-, beside √(150 + 1.8 + 2.25 + 0.05) = 12.4 e-: the 99 % pixel is one of
        // them, √(154 + 144) = 17.3 e-
        var camera = new Tarn { HotShare = 0 };
        ModeProfile mode = With(camera, new FlickerClass(false, 180_000, camera.Of(12, "e-"), 80));
        var stack = new StackConditions
        {
            Sky = SkyRate.Given(0.5).Rate,
            ExposureSeconds = 300,
            TemperatureCelsius = -10,
            Lights = 10,
        };
        SensorModel with = SensorReader.Of(camera.Profile(), mode).Best,
            without = SensorReader.Of(camera.Profile(), camera.Mode()).Best;
        FlickerAtRank at = FlickerRanks.Rank(with, 0.5, 300, -10).Single(r => r.Share == 0.99);
        Assert.Equal(17.27, at.With, 0.05);
        Assert.Equal(12.42, at.Without, 0.05);
        Assert.Empty(FlickerRanks.Rank(without, 0.5, 300, -10));
        double all =
            StackNoise.Compute(with, stack, 0.5, null).AllPixels!.Value
            - StackNoise.Compute(without, stack, 0.5, null).AllPixels!.Value;
        // ρ² and beyond are below 0.1 %
        Assert.Equal(0.02 * 144 / 10 * (1 + 2 * Math.Exp(-300 / 80.0) * 0.9), all, 0.01);
    }

    [Fact]
    public void WhereTheProfileOnlyCountsThemItSaysSo()
    {
        var camera = new Tarn();
        ModeProfile mode = camera.Mode();
        mode = mode with
        {
            FixedPattern = mode.FixedPattern! with
            {
                Defects = new DefectCounts { Flickering = 40, Telegraph = 24 },
            },
        };
        SetpointAnswer answer = SetpointAdvice.Find(
            camera.Profile(),
            mode,
            new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
        );
        Assert.Equal(
            "The profile counts pixels that jump between levels but does not hold their steps, so their noise is "
                + "left out: characterise again with this version.",
            answer.Findings.Single(f => f.Code == "flicker-unknown").Message
        );
    }

    private static ModeProfile With(Tarn camera, FlickerClass flicker)
    {
        ModeProfile mode = camera.Mode();
        return mode with { FixedPattern = mode.FixedPattern! with { Flicker = [flicker] } };
    }

    private static SimulatedNight Night(TelegraphPixels telegraph, double exposure) =>
        new(
            new CameraDescription
            {
                Width = Width,
                Height = Height,
                Gain = 0.25,
                ReadNoise = 1,
                TelegraphPixels = telegraph,
                DarkCurrent = new DarkCurrentParameters
                {
                    RateAtReference = 1e-6,
                    ReferenceTemperature = -10,
                    DoublingTemperature = 6,
                },
                Shots =
                [
                    new SensorProfile.Simulation.Parameters.Session.Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = exposure,
                        Temperature = -10,
                        Count = Lights,
                    },
                ],
            },
            seed: 5
        );

    private static double Interval(TelegraphPixels telegraph, double exposure)
    {
        SimulatedNight night = Night(telegraph, exposure);
        return (night.Frames[1].StartUtc - night.Frames[0].StartUtc).TotalSeconds;
    }

    /// <summary>Variance over the pixels, e-², of the first frame and of the mean of all.</summary>
    private static (double One, double Mean) Variances(TelegraphPixels telegraph, double exposure)
    {
        SimulatedNight night = Night(telegraph, exposure);
        ushort[][] frames = [.. night.Frames.Select(f => night.Render(f))];
        double[] mean = [.. Enumerable.Range(0, Width * Height).Select(i => 0.25 * frames.Average(f => f[i]))];
        return (Variance([.. frames[0].Select(p => 0.25 * p)]), Variance(mean));
    }

    private static double Variance(double[] values)
    {
        double mean = values.Average();
        return values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1);
    }
}
