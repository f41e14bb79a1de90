using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Nights;

/// <summary>The sentences that were wrong at the edges, as they are now.</summary>
public class SetpointDocumentTests
{
    private static readonly Tarn camera = new();

    [Fact]
    public void TheCoolersLimitIsSaidWithWhatItCosts() =>
        Assert.StartsWith(
            "Run at −10 °C, the coldest the cooler holds with 3 °C in reserve: dark current then adds at most ",
            Of(new() { Rate = 0.06, HotFrom = 0.3 }, loss: 0.01, ambient: [22], difference: 35).Sentence,
            StringComparison.Ordinal
        );

    [Fact]
    public void ACoolerDoesNotHeat()
    {
        AnswerDocument said = Of(camera, sky: 20, ambient: [-5], difference: 35);
        Assert.StartsWith(
            "Run at −5 °C, no warmer than the air: dark current then adds",
            said.Sentence,
            StringComparison.Ordinal
        );
        Assert.EndsWith("and no cooling is needed.", said.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void BeyondTheDarksTheSentenceSaysSo() =>
        Assert.StartsWith(
            "Run at 8 °C, the coldest the cooler holds with 3 °C in reserve, outside the measured range of −20 °C to 5 °C "
                + "and so extrapolated: dark current then adds at most ",
            Of(camera, ambient: [40], difference: 35).Sentence,
            StringComparison.Ordinal
        );

    [Fact]
    public void WhereTheDarksEndTheMissingOnesAreNamed()
    {
        AnswerDocument said = Of(camera, range: [33, 36]);
        Assert.Matches(
            "^Run at 33 °C, the coldest measured: dark current adds at most [0-9.]+ % to the noise of a light in 99 % of "
                + "the pixels there, more than the 5 % you accept; add 12 darks of 30, 100 and 300 s at −6 °C",
            said.Sentence
        );
        Assert.Equal("limited", said.Verdict);
        AnswerDocument cold = Of(camera, range: [33, 36], ambient: [15], difference: 35);
        Assert.StartsWith(
            "Cannot tell the set point: the air is never warmer than 15 °C",
            cold.Sentence,
            StringComparison.Ordinal
        );
        Assert.True(cold.CannotTell);
    }

    [Fact]
    public void WithoutACoolerTheDarksEndToo() =>
        Assert.StartsWith(
            "Even at 33 °C outside, the coldest measured, dark current adds at most ",
            Of(camera, range: [33, 36], cooled: false).Sentence,
            StringComparison.Ordinal
        );

    [Fact]
    public void NightsOfAYearAreCounted()
    {
        double[] year = [.. Enumerable.Range(-8, 31).Select(t => (double)t)];
        Assert.EndsWith(
            "is within reach on 20 of 31 nights.", // −6 °C is held in air of up to 11 °C
            Of(camera, ambient: year, difference: 20).Sentence,
            StringComparison.Ordinal
        );
        AnswerDocument uncooled = Of(camera, ambient: [-8, -3, 3, 16, 30], cooled: false);
        Assert.EndsWith(
            "1 of your 3 nights is cold enough; cannot tell for 2 nights (16 °C to 30 °C).",
            uncooled.Sentence,
            StringComparison.Ordinal
        );
        Assert.True(uncooled.CannotTell);
    }

    [Fact]
    public void TheAssumedSkyIsSaidInEveryCulture()
    {
        SetpointAnswer answer = Answer(camera, 0.05, null, [], null, [-20, 5], true);
        AnswerDocument said = SetpointDocument.Compose(answer);
        Assert.Contains(
            "under a suburban sky, broad band (4.48 e⁻/px/s, assumed)",
            said.Reason,
            StringComparison.Ordinal
        );
        Assert.Equal(AssumptionSource.Default, Assert.Single(said.Assumptions, a => a.Name == "sky").Source);
        Assert.Contains(AnswerHint.GiveSky, said.Hints);
        Assert.Equal(
            (said.Sentence, said.Reason),
            InCulture.Run("de-DE", () =>
                (SetpointDocument.Compose(answer).Sentence, SetpointDocument.Compose(answer).Reason)
            )
        );
    }

    private static AnswerDocument Of(
        Tarn camera,
        double loss = 0.05,
        double sky = 0.5,
        double[]? ambient = null,
        double? difference = null,
        double[]? range = null,
        bool cooled = true
    ) =>
        SetpointDocument.Compose(
            Answer(camera, loss, SkyRate.Given(sky), ambient ?? [], difference, range ?? [-20, 5], cooled)
        );

    private static SetpointAnswer Answer(
        Tarn camera,
        double loss,
        SkyRate? sky,
        double[] ambient,
        double? difference,
        double[] range,
        bool cooled
    )
    {
        ModeProfile mode = camera.Mode();
        mode = mode with { DarkCurrent = mode.DarkCurrent! with { MeasuredRange = range } };
        return SetpointAdvice.Find(
            camera.Profile() with
            {
                Modes = [mode],
            },
            mode,
            new SetpointQuestion
            {
                ExposureSeconds = 300,
                Sky = NamedSkies.OrDefault(sky),
                Loss = loss,
                Ambient = [.. ambient.Select(t => new AmbientTemperature("night", t))],
                MaximumDifference = difference,
                Cooled = cooled,
            }
        );
    }
}
