using SensorProfile.Decisions.Exposure;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class RulesOfThumbTests
{
    [Theory] // 2^(10/ΔT₂): I(30)/I(20) within 2 and 4 for doublings of 5 to 10 °C
    [InlineData(5, 4.0)]
    [InlineData(6, 3.17480210)]
    [InlineData(10, 2.0)]
    public void WarmNight(double doubling, double ratio)
    {
        var camera = new Tarn { Doubling = doubling };
        TypicalLaw law = SensorReader.Of(camera.Profile(), camera.Mode()).Best.Law;
        Assert.Equal(ratio, law.RateAt(30) / law.RateAt(20), 5e-8);
        Assert.Equal(Math.Pow(2, 40 / doubling), law.RateAt(30) / law.RateAt(-10), 1e-6);
        Assert.Contains(
            $"{ratio.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)} times",
            RulesOfThumb.WarmNight(law),
            StringComparison.Ordinal
        );
    }

    [Theory] // "doubles every 5 to 7 °C" (common practice, no source)
    [InlineData(5, true)]
    [InlineData(6.09, true)]
    [InlineData(7, true)]
    [InlineData(8.11, false)]
    [InlineData(3.30, false)]
    public void UsualDoubling(double doubling, bool usual)
    {
        Assert.Equal(usual, RulesOfThumb.DoublingIsUsual(doubling));
        Assert.Contains(
            usual ? "which is usual" : "which is unusual",
            RulesOfThumb.Doubling(doubling),
            StringComparison.Ordinal
        );
    }

    [Theory] // R² ≤ ((1 + p)² − 1)·B·t at R 3.5, B 1.2, 10 %: from 48.611 s on
    [InlineData(48.6, false)]
    [InlineData(48.62, true)]
    public void LowGain(double exposure, bool drowned)
    {
        Assert.Equal(drowned, GainChoice.IsDrowned(3.5 * 3.5, 1.2, exposure, 0.10));
        Tarn low = new() { ReadNoise = 3.5, Gain = 1e-6 },
            high = new() { ReadNoise = 1.5, Gain = 1e-7 };
        ModeProfile lowMode = low.Mode() with { Settings = new ModeSettings { Gain = 0 } };
        ModeProfile highMode = high.Mode() with
        {
            Settings = new ModeSettings { Gain = 100 },
            FullWell = high.Of(10000, "e-"),
        };
        GainChoiceAnswer answer = GainChoice.Find(
            low.Profile() with
            {
                Modes = [highMode, lowMode],
            },
            SkyRate.Given(1.2),
            exposure,
            0.10
        );
        Assert.Equal(drowned ? 0 : 100, answer.Advised.Gain);
        Assert.Equal(48.6111111111, answer.Quantities["exposureNeeded"]!.Value, 1e-6);
        Assert.Equal(drowned, answer.Modes[0].Drowned);
        Assert.True(answer.Drowned);
    }

    [Fact] // one position changes nothing
    public void Dithering()
    {
        Assert.Contains("one position reduces nothing", RulesOfThumb.Dithering(1), StringComparison.Ordinal);
        Assert.Contains(
            "divide the residual spread of typical pixels here by 3",
            RulesOfThumb.Dithering(9),
            StringComparison.Ordinal
        );
    }
}
