using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.Decisions;

/// <summary>Rules of the trade that no other class of tests holds.</summary>
/// <remarks>
/// The silicon law is a maker's, as printed (data sheet of a silicon sensor): I ∝ T³·exp(−6400/T); its doubling
/// temperature is ln 2/(3/T + 6400/T²).
/// </remarks>
public class RulesOfTheTradeTests
{
    // By the maker's law a warm night costs a factor of 2.27 over 20 °C and 37.8 over −10 °C, by a doubling of
    // 6 °C 3.17 and 102, of 5 °C 256: the rule holds for all of them
    [Fact]
    public void AWarmNightByEveryLaw()
    {
        Assert.Equal(2.27230729, Silicon(30) / Silicon(20), 5e-9);
        Assert.Equal(37.8480436, Silicon(30) / Silicon(-10), 5e-8);
        Assert.InRange(Silicon(30) / Silicon(20), 2, 4);
        foreach ((double doubling, double ratio) in new[] { (6.0, 101.593667), (5.0, 256.0) })
        {
            var camera = new Tarn { Doubling = doubling };
            TypicalLaw law = SensorReader.Of(camera.Profile(), camera.Mode()).Best.Law;
            Assert.Equal(ratio, law.RateAt(30) / law.RateAt(-10), 5e-7);
        }
    }

    // The maker's law doubles as the rule says only from −47.194 to −3.321 °C, and every 6.000 °C at −24.437 °C
    [Theory]
    [InlineData(-47.20, false)]
    [InlineData(-47.19, true)]
    [InlineData(-24.437, true)]
    [InlineData(-3.33, true)]
    [InlineData(-3.31, false)]
    public void TheSiliconLawIsUsualInPart(double celsius, bool usual)
    {
        Assert.Equal(usual, RulesOfThumb.DoublingIsUsual(SiliconDoubling(celsius)));
        if (celsius == -24.437)
            Assert.Equal(6.000, SiliconDoubling(celsius), 5e-5);
    }

    [Fact] // an exposure between one and ten minutes, 300 s at 0.01 e-/px/s being 3 e-
    public void FiveMinuteDarksHoldThreeElectrons()
    {
        var camera = new Tarn
        {
            Rate = 0.01,
            LogSpread = 0,
            HotShare = 0,
        };
        double exposure = DarksPlan
            .Find(camera.Profile(), new PlanQuestion { Sky = SkyRate.Given(0.5) })
            .Masters[0]
            .Exposure!;
        Assert.InRange(exposure, 60, 600);
        Assert.Equal(
            3.0,
            SensorReader.Of(camera.Profile(), camera.Mode()).Best.Law.RateAt(Tarn.Reference) * exposure,
            1e-12
        );
    }

    private static double Silicon(double celsius) =>
        Math.Pow(celsius + 273.15, 3) * Math.Exp(-6400 / (celsius + 273.15));

    private static double SiliconDoubling(double celsius) =>
        Math.Log(2) / (3 / (celsius + 273.15) + 6400 / Math.Pow(celsius + 273.15, 2));
}
