using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Tests.Content.Nights;

public class NightAnswersTests
{
    // the report asks what the commands ask when nothing is said: the default sky, at the set point that follows
    [Fact]
    public void TheToleranceIsThatOfDarksMatch()
    {
        CameraProfile profile = TarnProfile.Build();
        NightAnswers answers = NightAnswers.Ask(profile, profile.Modes[0]);
        var question = new ToleranceQuestion
        {
            ExposureSeconds = NightAnswers.ExposureSeconds,
            Lights = NightAnswers.Lights,
        };
        question = question with { Sky = NamedSkies.OrDefault(null) };
        AssumedTemperature taken = AssumedTemperature.Choose(profile, profile.Modes[0], question, cooled: true);
        ToleranceAnswer match = DarkTolerance.FindBoth(
            profile,
            profile.Modes[0],
            question with
            {
                TemperatureCelsius = taken.Celsius,
            }
        );
        ToleranceAnswer still = Assert.Single(answers.Still),
            dithered = Assert.Single(answers.Dithered);
        Assert.Equal(ToleranceDocument.Compose(match).Sentence, ToleranceDocument.Compose(still).Sentence);
        Assert.Equal(match.Quantities["toleranceWarmer"], still.Quantities["toleranceWarmer"]);
        Assert.Equal(match.Dithered!.Quantities["toleranceWarmer"], dithered.Quantities["toleranceWarmer"]);
        Assert.Equal(taken.Celsius, Assert.Single(answers.Setpoints).Quantities["setpoint"]!.Value);
    }

    [Fact] // the report's numbers of darks are those of a plan for the same stack, sky by sky
    public void TheNumbersOfDarksAreThoseOfThePlan()
    {
        CameraProfile profile = TarnProfile.Build();
        NightAnswers answers = NightAnswers.Ask(profile, profile.Modes[0]);
        foreach (
            (int positions, var counts) in new[]
            {
                (1, answers.Counts),
                (NightAnswers.Positions, answers.DitheredCounts),
            }
        )
            Assert.All(counts, count =>
            {
                PlanAnswer plan = DarksPlan.Find(
                    profile,
                    new PlanQuestion
                    {
                        Lights =
                        [
                            new PlannedLights
                            {
                                ExposureSeconds = NightAnswers.ExposureSeconds,
                                StartCelsius = count.Stack.TemperatureCelsius,
                                Lights = NightAnswers.Lights,
                                DitherPositions = positions,
                                Rejection = positions > 1 ? Rejection.SigmaClip : Rejection.None,
                            },
                        ],
                        Sky = count.Sky,
                    }
                );
                Assert.Equal(Assert.Single(plan.Masters).Frames, count.Quantities["darks"]!.Value);
            });
    }
}
