using System.Globalization;
using System.Text.RegularExpressions;
using SensorProfile.Decisions.Exposure;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Nights;

public sealed partial class ExposureDocumentTests
{
    private static readonly Tarn exact = new() { Relative = 0, Gain = 1e-6 }; // no quantisation to speak of

    // R 1.5 e⁻, B 0.5 e⁻/px/s, 5 %: 43.9024390244 s
    [Theory]
    [InlineData(null, "Expose at least 44 s: read noise then adds no more than 5 %", "answered")]
    [InlineData(43.8, "Expose longer than 43.8 s, at least 44 s", "too-short")]
    [InlineData(44.0, "Expose 44 s: long enough", "long-enough")]
    public void AnExposureInMindIsJudged(double? seconds, string beginning, string verdict)
    {
        AnswerDocument said = ExposureDocument.Compose(
            ExposureAdvice.Find(
                exact.Profile(),
                new ExposureQuestion { ExposureSeconds = seconds, Sky = SkyRate.Given(0.5) }
            )
        );
        Assert.StartsWith(beginning, said.Sentence, StringComparison.Ordinal);
        Assert.Equal(verdict, said.Verdict);
    }

    // "Expose at least 7349 h", although sky and dark current fill half the well after 7 h: a well of 100 e⁻ is half full
    // after 50/(0.001 + 0.006) = 7143 s, read noise is drowned after 21951 s
    [Fact]
    public void NoExposureBeyondTheWellIsAdvised()
    {
        string said = ExposureDocument
            .Compose(
                ExposureAdvice.Find(
                    (exact with { Well = 100 }).Profile(),
                    new ExposureQuestion { Sky = SkyRate.Given(0.001) }
                )
            )
            .Sentence;
        Assert.StartsWith(
            "Expose as long as mount and bright stars allow: read noise adds more than 5 %",
            said,
            StringComparison.Ordinal
        );
    }

    // over a thousand cameras: the exposure in the sentence keeps the loss, one a tenth shorter does not, and a
    // brighter
    // sky or a larger loss asks for no longer one
    [Fact]
    public void AThousandAnswersAgreeWithThemselves()
    {
        for (int seed = 0; seed < 1200; seed++)
        {
            var given = new RandomCase(seed);
            double sky = given.Question.Sky!.Rate.Value,
                loss = given.Question.Loss;
            GainChoiceAnswer Ask(double s, double p) =>
                ExposureAdvice.Find(
                    given.Profile,
                    new ExposureQuestion
                    {
                        Sky = SkyRate.Given(s),
                        Loss = p,
                        TemperatureCelsius = given.Range[0],
                    }
                );
            GainChoiceAnswer answer = Ask(sky, loss);
            double shortest = answer.AdvisedRow.ExposureNeeded.Value,
                electronics =
                    given.Camera.ReadNoise * given.Camera.ReadNoise + given.Camera.Gain * given.Camera.Gain / 12;
            double background = sky + answer.AdvisedRow.DarkRate!.Value; // √(1 + R²/((S + I)t)) − 1 = p
            Assert.Equal(loss, Math.Sqrt(1 + electronics / (background * shortest)) - 1, 1e-9);
            Assert.Equal(shortest, answer.Quantities["shortestExposure"]!.Value);
            Match said = Seconds().Match(ExposureDocument.Compose(answer).Sentence);
            if (said.Success)
                Assert.InRange(
                    double.Parse(said.Groups[1].Value, CultureInfo.InvariantCulture),
                    shortest * 0.995, // three digits
                    Math.Max(shortest * 1.1, shortest + 1)
                );
            else
            {
                // hours, or the well fills first and no such exposure can be taken
                bool wellFirst = answer.AdvisedRow.LongestExposure is { } longest && longest.Value < shortest;
                Assert.True(shortest > 7199 || wellFirst, $"seed {seed}");
            }
            Assert.True(Ask(2 * sky, loss).AdvisedRow.ExposureNeeded.Value < shortest);
            Assert.True(Ask(sky, 1.5 * loss).AdvisedRow.ExposureNeeded.Value < shortest);
        }
    }

    [GeneratedRegex(@"at least ([0-9.]+) s")]
    private static partial Regex Seconds();
}
