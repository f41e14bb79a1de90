using SensorProfile.Decisions.Exposure;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Decisions.Exposure;

public class ExposureAdviceTests
{
    private static readonly Tarn exact = new() { Relative = 0, Gain = 1e-6 }; // no quantisation to speak of

    // c·R²/B with R 1.5 e⁻, B 0.5 e⁻/px/s, 5 %: 43.9024390244 s; half of 50 000 e⁻ at 0.5 + the rate of the pixel at 99.9 %
    [Fact]
    public void ShortestAndLongestAreThoseOfTheFormulas()
    {
        GainChoiceAnswer answer = ExposureAdvice.Find(
            exact.Profile(),
            new ExposureQuestion { Sky = SkyRate.Given(0.5) }
        );
        Assert.Equal(43.9024390244, answer.Quantities["shortestExposure"]!.Value, 1e-6);
        Assert.Equal(
            0.5 * 50000 / (0.5 + exact.RateAt(0.999)),
            answer.Quantities["longestExposure"]!.Value,
            1e-3 * 50000
        );
        Assert.True(answer.AdvisedRow.FillsHottest);
        Assert.Equal(44, answer.ShortestUseful);
        Assert.Equal(ExposureVerdict.Answered, answer.Verdict);
    }

    // "sky and dark current fill 50 % of the well after 49 min" was true of one pixel in a thousand
    [Fact]
    public void WithoutADistributionTheTypicalPixelFills()
    {
        CameraProfile profile = exact.Profile();
        ModeProfile mode = profile.Modes[0] with { FixedPattern = null };
        GainRow row = ExposureAdvice
            .Find(profile with { Modes = [mode] }, new ExposureQuestion { Sky = SkyRate.Given(0.5) })
            .AdvisedRow;
        Assert.False(row.FillsHottest);
        Assert.Equal(0.5 * 50000 / (0.5 + exact.Rate), row.LongestExposure!.Value, 1);
    }

    // c·R²/(S + I): where the temperature of the lights is known, their dark current drowns read noise as the sky does
    [Fact]
    public void KnownDarkCurrentCountsBesideTheSky()
    {
        GainChoiceAnswer answer = ExposureAdvice.Find(
            exact.Profile(),
            new ExposureQuestion { Sky = SkyRate.Given(0.5), TemperatureCelsius = 5 }
        );
        double dark = exact.Rate * Math.Pow(2, (5 - Tarn.Reference) / exact.Doubling);
        Assert.Equal(43.9024390244 * 0.5 / (0.5 + dark), answer.Quantities["shortestExposure"]!.Value, 1e-6);
        Assert.Equal(dark, answer.AdvisedRow.DarkRate!.Value, 1e-12);
    }

    [Theory]
    [InlineData(43.8, ExposureVerdict.TooShort)]
    [InlineData(44.0, ExposureVerdict.LongEnough)]
    public void AnExposureInMindIsJudged(double seconds, ExposureVerdict verdict) =>
        Assert.Equal(
            verdict,
            ExposureAdvice
                .Find(exact.Profile(), new ExposureQuestion { ExposureSeconds = seconds, Sky = SkyRate.Given(0.5) })
                .Verdict
        );

    // the low gain setting needs (3.5/1.5)² times longer lights: 239 s, within the usual 300 s, so it is advised; 60 s
    // in mind choose the other
    [Fact]
    public void TheLargerWellIsAdvisedWhereTheSkyDrownsItsNoise()
    {
        ModeProfile low = (exact with { ReadNoise = 3.5 }).Mode() with
        {
            Settings = new ModeSettings { Gain = 0 },
            FullWell = exact.Of(80000, "e-"),
        };
        CameraProfile both = exact.Profile(low);
        Assert.Equal(0, ExposureAdvice.Find(both, new ExposureQuestion { Sky = SkyRate.Given(0.5) }).Advised.Gain);
        Assert.Equal(
            100,
            ExposureAdvice
                .Find(both, new ExposureQuestion { ExposureSeconds = 60, Sky = SkyRate.Given(0.5) })
                .Advised.Gain
        );
        Assert.Equal(
            0,
            ExposureAdvice
                .Find(
                    both,
                    new ExposureQuestion
                    {
                        ExposureSeconds = 60,
                        Sky = SkyRate.Given(0.5),
                        Settings = new ModeSettings { Gain = 0 },
                    }
                )
                .Advised.Gain
        );
    }

    [Fact]
    public void AWellThatFillsTooSoonIsAWarning()
    {
        GainChoiceAnswer answer = ExposureAdvice.Find(
            exact.Profile(),
            new ExposureQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(200) }
        );
        Assert.Contains(answer.Findings, f => f is { Code: "well-fills", Severity: Severity.Warning });
    }

    [Fact]
    public void WrongQuestionsAreRefused()
    {
        foreach (
            ExposureQuestion wrong in new[]
            {
                new ExposureQuestion { ExposureSeconds = -1 },
                new ExposureQuestion { Fill = 0 },
                new ExposureQuestion { Fill = double.NaN },
                new ExposureQuestion { Loss = 2 },
            }
        )
            Assert.Equal(
                RefusalKind.BadArgument,
                Assert.Throws<DecisionRefusedException>(() => ExposureAdvice.Find(exact.Profile(), wrong)).Kind
            );
        Assert.Equal(
            RefusalKind.CannotTell,
            Assert
                .Throws<DecisionRefusedException>(() =>
                    ExposureAdvice.Find(exact.Profile(), new ExposureQuestion { TemperatureCelsius = 60 })
                )
                .Kind
        );
    }
}
