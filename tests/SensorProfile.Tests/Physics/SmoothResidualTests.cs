using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Tests.Decisions;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Physics;

/// <summary>
/// Smooth residuals on their own scale: a picture of the residual that the answer allows, with the noise of the stack in
/// every pixel, is averaged over blocks of that scale; the block on the residual stands out by as many standard deviations
/// as said.
/// </summary>
public sealed class SmoothResidualTests(ITestOutputHelper output)
{
    private const double ReadNoise = 1.5,
        Rate = 0.006, // e-/px/s at −10 °C, doubles every 6 °C
        Doubling = 6,
        Peak = 0.5, // glow, e-/px/s at −10 °C, with the law of the typical pixel
        Sky = 0.5,
        Seconds = 300;
    private const int Lights = 40;

    [Theory]
    [InlineData(16, true)]
    [InlineData(64, true)]
    [InlineData(16, false)]
    [InlineData(64, false)]
    public void AResidualAtTheLimitIsSeenAsSaid(int scale, bool ofGlow)
    {
        BindingCause cause = ofGlow ? BindingCause.Glow : BindingCause.Level;
        ToleranceAnswer answer = Ask(scale);
        double warmer = answer.Causes.Single(c => c.Cause == cause).Warmer!.Value,
            residual = Math.Abs(ResidualOf(cause, warmer)),
            seen = SigmasSeen(residual, scale, seed: 41 + scale);
        output.WriteLine(
            $"{cause}, {scale} px: {warmer:0.####} °C warmer leaves {residual:0.###} e-, seen at {seen:0.##} sigma"
        );
        // the mean of 400 blocks is known to a twentieth of a standard deviation, the spread of 3600 to 1.2 %
        Assert.InRange(seen / answer.Limits.SmoothFactor, 0.95, 1.05);
    }

    [Fact] // ten pixels is what half the noise of one pixel comes to
    public void TheDefaultIsThatOfTenPixels()
    {
        ToleranceAnswer usual = Ask(null),
            ten = Ask(10);
        Assert.Equal(usual.Quantities["toleranceWarmer"]!.Value, ten.Quantities["toleranceWarmer"]!.Value, 1e-9);
        Assert.True(Ask(100).Quantities["toleranceWarmer"]!.Value < usual.Quantities["toleranceWarmer"]!.Value);
        Assert.Equal(BindingCause.Glow, Ask(100).BindingCause);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(20_000)]
    public void AScaleThatIsNoneIsRefused(double scale) =>
        Assert.Equal("smooth-scale-out-of-range", Assert.Throws<DecisionRefusedException>(() => Ask(scale)).Code);

    private static ToleranceAnswer Ask(double? scale)
    {
        var camera = new Tarn
        {
            Rate = Rate,
            Doubling = Doubling,
            HotShare = 0,
            LogSpread = 0.01,
            ReadNoise = ReadNoise,
            Gain = 0.1, // rounding counts for nothing
        };
        camera = camera with { Glow = [new GlowRegion { Where = "right edge", Peak = camera.Of(Peak, "e-/px/s") }] };
        return DarkTolerance.Find(
            camera.Profile(),
            camera.Mode(),
            new ToleranceQuestion
            {
                ExposureSeconds = Seconds,
                Lights = Lights,
                TemperatureCelsius = -10,
                DitherPositions = 1,
                Sky = SkyRate.Given(Sky),
                Limits = new LossLimits { SmoothPixels = scale },
            }
        );
    }

    /// <summary>What darks that are warmer leave in a light: of the glow at its peak, or as a gradient of the level.</summary>
    private static double ResidualOf(BindingCause cause, double warmer)
    {
        double grown = Math.Pow(2, warmer / Doubling) - 1;
        // the flat lifts the corner, where it falls off by 30 %, by that share of the level
        return cause == BindingCause.Glow ? Peak * Seconds * grown : 0.3 * Rate * Seconds * grown;
    }

    /// <summary>
    /// Mean of the blocks on the residual over the standard deviation of blocks beside it, in pictures of pixels that
    /// each have the noise of the stack.
    /// </summary>
    private static double SigmasSeen(double residual, int scale, int seed)
    {
        const int blocks = 4000,
            on = 400;
        var random = new Random(seed);
        double noise = Math.Sqrt((Sky + Rate) * Seconds + ReadNoise * ReadNoise) / Math.Sqrt(Lights),
            seen = 0,
            beside = 0,
            squares = 0;
        for (int block = 0; block < blocks; block++)
        {
            double sum = 0;
            for (int pixel = 0; pixel < scale * scale; pixel++)
                sum += (block < on ? residual : 0) + noise * Normal(random);
            double mean = sum / (scale * scale);
            if (block < on)
                seen += mean;
            else
            {
                beside += mean;
                squares += mean * mean;
            }
        }
        int rest = blocks - on;
        return seen / on / Math.Sqrt(squares / rest - Math.Pow(beside / rest, 2));
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
