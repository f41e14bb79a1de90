using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.Decisions.DarkCount;

public class DarkCountAdviceTests
{
    [Fact]
    public void AgreesWithTheFormula()
    {
        DarkCountAnswer answer = Ask(50, 1);
        double dark = 1.8 + 2.25 + 0.64 / 12,
            light = dark + 150;
        Assert.Equal(MinDarks.Smallest(dark / light, 50, 0.05), answer.Quantities["darks"]!.Value);
        Assert.Equal(100 * MinDarks.Loss(dark / light, 50, 20), answer.Quantities["lossAt20"]!.Value, 1e-9);
    }

    [Fact] // the report's table said fewer than the plan
    public void NoFewerThanTellACosmicRayAreAdvised()
    {
        DarkCountAnswer answer = Ask(40, 40);
        Assert.Equal(MinDarks.MinInMaster, answer.Quantities["darks"]!.Value);
        Assert.True(answer.FewestForHits);
    }

    [Fact]
    public void DitheringNeedsFewerDarks() =>
        Assert.True(Ask(200, 20).Quantities["darks"]!.Value < Ask(200, 1).Quantities["darks"]!.Value);

    // the advised number keeps the loss pixel by pixel: stacks with and without the noise of the master differ by p
    [Fact]
    public void TheAdvisedNumberKeepsTheLossPixelByPixel()
    {
        var camera = new Tarn
        {
            HotShare = 0,
            LogSpread = 0,
            Gain = 0.1,
        };
        var question = new DarkCountQuestion
        {
            ExposureSeconds = 60,
            TemperatureCelsius = -10,
            Lights = 30,
            Sky = SkyRate.Given(0.05),
        };
        int n = (int)DarkCountAdvice.Find(camera.Profile(), camera.Mode(), question).Quantities["darks"]!.Value;
        var stack = new StackConditions
        {
            Sky = question.Sky!.Rate,
            ExposureSeconds = 60,
            TemperatureCelsius = -10,
            Lights = 30,
        };
        double Noise(int frames) =>
            new PixelMonteCarlo(
                camera,
                stack,
                new DarkFrames
                {
                    ExposureSeconds = 60,
                    TemperatureCelsius = -10,
                    Frames = frames,
                },
                4000,
                9
            ).StackNoise();
        // each of the two noises is known to 1.1 %
        Assert.Equal(1.05, Noise(n) / Math.Sqrt((0.05 * 60 + 0.36 + 2.25 + 0.01 / 12) / 30), 0.035);
    }

    private static DarkCountAnswer Ask(int lights, int positions) =>
        DarkCountAdvice.Find(
            new Tarn().Profile(),
            new Tarn().Mode(),
            new DarkCountQuestion
            {
                ExposureSeconds = 300,
                TemperatureCelsius = -10,
                Lights = lights,
                DitherPositions = positions,
                Sky = SkyRate.Given(0.5),
            }
        );
}
