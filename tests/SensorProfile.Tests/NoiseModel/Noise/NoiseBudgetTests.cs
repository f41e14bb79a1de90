using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Response;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class NoiseBudgetTests
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
        NoiseBudgetAnswer budget = NoiseBudget.Compute(camera.Profile(), camera.Mode(), stack, darks);
        double simulated = new PixelMonteCarlo(camera, stack, darks, 4000, seed: 41).StackNoise();
        Assert.InRange(budget.Quantities["stackNoiseAllPixels"]!.Value / simulated, 0.9, 1.1);
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
        double budget = NoiseBudget.Compute(camera.Profile(), camera.Mode(), stack, darks).Quantities[
            "stackNoiseAllPixels"
        ]!.Value;
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
        double budget = NoiseBudget.Compute(camera.Profile(), camera.Mode(), stack, darks).Quantities[
            "stackNoiseAllPixels"
        ]!.Value;
        double plain = NoiseBudget
            .Compute(camera.Profile(), camera.Mode(), stack with { Rejection = Rejection.None }, darks)
            .Quantities["stackNoiseAllPixels"]!.Value;
        double simulated = new PixelMonteCarlo(camera, stack, darks, 4000, seed: 47).StackNoise();
        Assert.True(budget < plain);
        Assert.InRange(budget / simulated, 0.9, 1.1);
    }

    [Fact]
    public void TheTermsOfTheTypicalPixelSumToItsNoise()
    {
        var camera = new Tarn();
        StackConditions stack = Stack(300, 20, 1);
        NoiseBudgetAnswer budget = NoiseBudget.Compute(camera.Profile(), camera.Mode(), stack, Darks(300, 0));
        Assert.Equal(1, budget.Terms.Sum(t => t.ShareOfSub), 1e-12);
        Assert.Equal(1, budget.Terms.Sum(t => t.ShareOfStack), 1e-12);
        // S·t + I·t + R² + q² + (I·t + R² + q²)/n = 150 + 1.8 + 2.25 + 0.64/12 + 4.1033/20
        double expected = 150 + 1.8 + 2.25 + 0.64 / 12 + (1.8 + 2.25 + 0.64 / 12) / 20;
        Assert.Equal(Math.Sqrt(expected), budget.Quantities["subNoise"]!.Value, 1e-9);
        Assert.Equal("sky", budget.Terms[0].Name);
    }

    [Fact] // I-6
    public void NoiseGrowsWithTemperature()
    {
        var camera = new Tarn();
        double before = 0;
        for (double t = -25; t <= 10; t += 2.5)
        {
            double noise = NoiseBudget
                .Compute(camera.Profile(), camera.Mode(), Stack(300, 1, 1) with { TemperatureCelsius = t })
                .Quantities["subNoise"]!.Value;
            Assert.True(noise > before);
            before = noise;
        }
    }

    [Fact]
    public void MoreDitherPositionsThanLightsAreRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            NoiseBudget.Compute(new Tarn().Profile(), new Tarn().Mode(), Stack(300, 4, 9))
        );
        Assert.Equal("4 lights cannot have 9 dither positions: give at most one position per light.", refused.Message);
        Assert.Equal(RefusalKind.BadArgument, refused.Kind);
    }

    [Fact]
    public void AProfileWithoutReadNoiseIsRefused()
    {
        var camera = new Tarn();
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            NoiseBudget.Compute(camera.Profile(), camera.Mode() with { ReadNoise = null }, Stack(300, 1, 1))
        );
        Assert.Equal(
            "The profile has no read noise in electrons: add bias frames and flat pairs and characterise again.",
            refused.Message
        );
        Assert.Equal(RefusalKind.CannotTell, refused.Kind);
    }

    [Fact]
    public void AColourCameraWhoseChannelsDifferIsAnsweredFromTheirMean()
    {
        var camera = new Tarn();
        ChannelProfile[] channels =
        [
            .. new[] { 1.4, 1.5, 1.5, 1.6 }.Select(
                (r, i) =>
                    new ChannelProfile
                    {
                        Name = $"C{i}",
                        ReadNoise = camera.Of(r, "e-"),
                        Gain = camera.Of(0.8, "e-/ADU"),
                    }
            ),
        ];
        NoiseBudgetAnswer answer = NoiseBudget.Compute(
            camera.Profile(),
            camera.Mode() with
            {
                ReadNoise = null,
                Gain = null,
                Channels = channels,
            },
            Stack(300, 1, 1)
        );
        Assert.Equal(
            NoiseBudget.Compute(camera.Profile(), camera.Mode(), Stack(300, 1, 1)).Quantities["subNoise"]!.Value,
            answer.Quantities["subNoise"]!.Value,
            1e-9
        );
        Assert.Contains(answer.Findings, f => f.Code == "channels-averaged");
    }

    [Fact]
    public void AProfileWithoutDarkCurrentIsRefused()
    {
        var camera = new Tarn();
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            NoiseBudget.Compute(camera.Profile(), camera.Mode() with { DarkCurrent = null }, Stack(300, 1, 1))
        );
        Assert.Equal(
            "The profile has no dark current against temperature: add darks of three exposures at three "
                + "temperatures and characterise again.",
            refused.Message
        );
    }

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
