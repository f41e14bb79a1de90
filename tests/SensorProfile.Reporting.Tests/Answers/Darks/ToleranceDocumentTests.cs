using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>How far off darks may be, in words.</summary>
public class ToleranceDocumentTests
{
    [Theory] // nearer than 0.2 °C, which coolers hold from night to night
    [InlineData(0.05, 1000)]
    [InlineData(5, 10)]
    public void LimitsThatNoCoolerHoldsAreSaid(double sky, int lights)
    {
        ToleranceAnswer answer = Find(new Tarn(), Question() with { Sky = SkyRate.Given(sky), Lights = lights });
        AnswerDocument said = ToleranceDocument.Compose(answer);
        Assert.Equal(lights == 1000, answer.BeyondCoolers);
        Assert.Equal(answer.BeyondCoolers, said.Findings.Any(f => f.Code == "tolerance-below-coolers"));
        Assert.StartsWith(
            answer.BeyondCoolers
                ? "No darks of another night come as close as this stack needs ("
                : "Use darks at most ",
            said.Sentence,
            StringComparison.Ordinal
        );
        if (answer.BeyondCoolers)
            Assert.EndsWith(
                "dither and reject outliers, or take the darks at the temperature of the lights, on the same night.",
                said.Sentence,
                StringComparison.Ordinal
            );
    }

    [Fact] // seen: "dither and reject outliers" for 10000 lights, where that leaves 0.01 °C
    public void AWayOutThatIsNoneIsNotOffered()
    {
        ToleranceAnswer answer = DarkTolerance.FindBoth(
            new Tarn().Profile(),
            new Tarn().Mode(),
            Question() with
            {
                Lights = 10000,
                Sky = SkyRate.Given(0.05),
            }
        );
        Assert.True(answer is { BeyondCoolers: true, Dithered.BeyondCoolers: true });
        Assert.EndsWith(
            ": take the darks at the temperature of the lights, on the same night, dither over as many positions as you "
                + "can and reject outliers.",
            ToleranceDocument.Compose(answer).Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact] // seen: "Use darks at most 53 °C warmer" from a profile of −20 °C to 5 °C
    public void ALimitFarOutsideTheMeasuredRangeIsSaidAtOnce()
    {
        ToleranceAnswer answer = Find(new Tarn(), Question() with { Lights = 1, Sky = SkyRate.Given(50) });
        answer = answer with { Findings = [new Finding("tolerance-extrapolated", Severity.Warning, "Far outside.")] };
        Assert.StartsWith(
            "Extrapolated, far outside the measured range: use darks ",
            ToleranceDocument.Compose(answer).Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhereDitheringWasNotSaidItIsShownWhatItBuys() =>
        Assert.Contains(
            "Dithered over 20 positions with outliers rejected, at most ",
            ToleranceDocument
                .Compose(
                    DarkTolerance.FindBoth(new Tarn().Profile(), new Tarn().Mode(), Question() with { Lights = 40 })
                )
                .Reason,
            StringComparison.Ordinal
        );

    [Fact]
    public void OfThreeSkiesTheStrictestIsAnswered()
    {
        AnswerDocument said = ToleranceDocument.Compose(Find(new Tarn(), Question() with { Sky = null }));
        Assert.EndsWith(", the strictest of three.)", said.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void NoLimitIsAnyAmount()
    {
        var quiet = new Tarn
        {
            Rate = 0.0001,
            HotShare = 0,
            HotFrom = 0.01,
        };
        Assert.Contains(
            "any amount colder",
            ToleranceDocument.Compose(Find(quiet, Question() with { Lights = 1 })).Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WithoutADistributionItCannotTell()
    {
        AnswerDocument said = ToleranceDocument.Compose(Find(new Tarn { Distribution = false }, Question()));
        Assert.True(said.CannotTell);
        Assert.Equal(
            "Cannot tell how far off darks may be: the profile does not say how dark current spreads over the pixels.",
            said.Sentence
        );
        Assert.EndsWith(
            "8 darks of 300 s at −10 °C (40 min) would show the spread: characterise again with them.",
            said.Reason,
            StringComparison.Ordinal
        );
    }

    private static ToleranceAnswer Find(Tarn camera, ToleranceQuestion question) =>
        DarkTolerance.Find(camera.Profile(), camera.Mode(), question);

    private static ToleranceQuestion Question() =>
        new()
        {
            ExposureSeconds = 300,
            TemperatureCelsius = -10,
            Lights = 20,
            Sky = SkyRate.Given(0.5),
        };
}
