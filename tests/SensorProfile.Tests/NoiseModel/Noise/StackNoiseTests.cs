using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class StackNoiseTests
{
    public static TheoryData<double, double, int, int, double> Grid()
    {
        var grid = new TheoryData<double, double, int, int, double>();
        foreach (double offset in new[] { -4.0, 0, 3 })
        foreach (double exposure in new[] { 60.0, 300 })
        foreach ((int lights, int positions) in new[] { (1, 1), (12, 1), (12, 12), (36, 9) })
        foreach (double share in new[] { 0.0, 0.01 })
            grid.Add(offset, exposure, lights, positions, share);
        return grid;
    }

    [Theory, MemberData(nameof(Grid))]
    public void AgreesWithThePixelsWithinTenPerCent(
        double offset,
        double exposure,
        int lights,
        int positions,
        double hotShare
    )
    {
        // 4000 places: the standard deviation is known to 1.1 % for normal noise; hot pixels end at 0.6 e-/px/s (power
        // 3), so that their
        // sampled variance is known well enough too. Agreement asked for: 10 %.
        var camera = new Tarn
        {
            HotShare = hotShare,
            HotPower = 3,
            Rate = 0.02,
            HotFrom = 0.1,
            LogSpread = 0.3,
        };
        StackConditions stack = Stack(exposure, lights, positions);
        DarkFrames darks = Darks(exposure, offset);
        double simulated = new PixelMonteCarlo(camera, stack, darks, 4000, seed: 41).StackNoise();
        Assert.InRange(AllPixels(camera, stack, darks) / simulated, 0.9, 1.1);
    }

    [Theory]
    [InlineData(0, 10, 1)]
    [InlineData(5, 10, 1)]
    [InlineData(0, 30, 30)]
    public void ScaledDarksAgreeWithThePixels(double offset, int darkFrames, int positions)
    {
        var camera = new Tarn
        {
            HotPower = 3,
            Rate = 0.02,
            HotFrom = 0.1,
            LogSpread = 0.3,
        };
        StackConditions stack = Stack(120, 30, positions);
        DarkFrames darks = Darks(300, offset) with { Scaled = true, BiasFrames = 15, Frames = darkFrames };
        double budget = AllPixels(camera, stack, darks);
        Assert.InRange(budget / new PixelMonteCarlo(camera, stack, darks, 4000, seed: 43).StackNoise(), 0.9, 1.1);
    }

    [Theory]
    [InlineData(4.0, 0.01)]
    [InlineData(-4.0, 0.01)]
    [InlineData(8.0, 0.03)]
    public void RejectionAgreesWithThePixels(double offset, double hotShare)
    {
        var camera = new Tarn
        {
            HotShare = hotShare,
            HotPower = 1.5,
            Rate = 0.006,
            HotFrom = 0.03,
        };
        StackConditions stack = Stack(300, 40, 20) with { Rejection = Rejection.SigmaClip };
        DarkFrames darks = Darks(300, offset) with { Frames = 60 };
        double budget = AllPixels(camera, stack, darks);
        double plain = AllPixels(camera, stack with { Rejection = Rejection.None }, darks);
        double simulated = new PixelMonteCarlo(camera, stack, darks, 4000, seed: 47).StackNoise();
        Assert.True(budget < plain);
        Assert.InRange(budget / simulated, 0.9, 1.1);
    }

    [Fact]
    public void TheTypicalPixelIsTheSumOfItsTerms()
    {
        PixelNoise noise = Budget(new Tarn(), Stack(300, 20, 1), Darks(300, 0)).Typical;
        // S·t + I·t + R² + q² are new in every light, (I·t + R² + q²)/n comes with the master
        Assert.Equal(150 + 1.8 + 2.25 + 0.64 / 12, noise.Random, 1e-9);
        Assert.Equal((1.8 + 2.25 + 0.64 / 12) / 20, noise.Common, 1e-9);
    }

    [Fact]
    public void NoiseGrowsWithTemperature()
    {
        var camera = new Tarn();
        double before = 0;
        for (double t = -25; t <= 10; t += 2.5)
        {
            double noise = Budget(camera, Stack(300, 1, 1) with { TemperatureCelsius = t }, null).Typical.Random;
            Assert.True(noise > before);
            before = noise;
        }
    }

    private static double AllPixels(Tarn camera, StackConditions stack, DarkFrames darks) =>
        Math.Sqrt(Budget(camera, stack, darks).AllPixels!.Value);

    private static StackNoise Budget(Tarn camera, StackConditions stack, DarkFrames? darks) =>
        StackNoise.Compute(SensorReader.Of(camera.Profile(), camera.Mode()).Best, stack, stack.Sky.Value, darks);

    private static StackConditions Stack(double exposure, int lights, int positions) =>
        new()
        {
            Sky = SkyRate.Given(0.5).Rate,
            ExposureSeconds = exposure,
            TemperatureCelsius = -10,
            Lights = lights,
            DitherPositions = positions,
        };

    private static DarkFrames Darks(double exposure, double offset) =>
        new()
        {
            ExposureSeconds = exposure,
            TemperatureCelsius = -10 + offset,
            Frames = 20,
        };
}
