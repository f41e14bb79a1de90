using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.Decisions;

/// <summary>The outside check values of the decisions (rows X, derived, and T, rules of the trade), and which test holds each; those that no other class holds stand here.</summary>
/// <remarks>
/// <code>
/// X-1  factor of the sub-exposure              SubExposureTests.Factor
/// X-2  sub-exposure, worked                    SubExposureTests.Worked, ExposureAdviceTests
/// X-3  darks for one light                     DarkCountTests.OneLightAndEqualNoise, LossByNumber
/// X-4  darks for many lights                   DarkCountTests.ManyLights
/// X-5  residual of a mismatched dark           DarkToleranceTests.Residual
/// X-6  tolerance, closed form, warm and cold   DarkToleranceTests.TheClosedFormHasItsValues, TheWarmSideIsTheTighterOne, AQuietCameraHasNoLimitOnTheColdSide
/// X-7  f for 5 and 10 %                        SetpointTests.SpreadFactor
/// X-8  tolerance, worked, dithered             DarkToleranceTests.WorkedExample, DitheringDividesTheResidualByTheRootOfThePositions
/// X-9  thermal allowance                       SetpointTests.ThermalAllowance
/// X-10 warmest set point, limited by a cooler  SetpointTests.WarmestSetpoint, TheCoolerLimitsTheAdvice
/// T-1  darks within 5 °C                       DarkToleranceTests.FiveDegreeRule, FiveDegreesNeedThisRatio
/// T-2  twenty darks                            DarkCountTests.TwentyDarks, TwentyDarksLimit
/// T-3  a new library every year                RulesOfThumbTests.Age, DriftComparisonTests
/// T-4  30 °C on a warm night                   RulesOfThumbTests.WarmNight, here
/// T-5  darks of five minutes                   DarksPlanTests.WithoutLightsThePlanIsForFiveMinutes, here
/// T-6  doubling every 5 to 7 °C                RulesOfThumbTests.UsualDoubling, here
/// T-7  the lower gain                          RulesOfThumbTests.LowGain
/// T-8  dithering                               RulesOfThumbTests.Dithering, DarkToleranceTests.DitheringDividesTheResidualByTheRootOfThePositions
/// </code>
/// The silicon law of T-4 and T-6 is a maker's, as printed: I ∝ T³·exp(−6400/T); its doubling temperature is ln 2/(3/T + 6400/T²).
/// </remarks>
public class OutsideValuesTests
{
    // T-4: by the maker's law a warm night costs a factor of 2.27 over 20 °C and 37.8 over −10 °C, by a doubling of
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

    // T-6: the maker's law doubles as the rule says only from −47.194 to −3.321 °C, and every 6.000 °C at −24.437 °C
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

    [Fact] // T-5: an exposure between one and ten minutes, 300 s at 0.01 e-/px/s being 3 e-
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
