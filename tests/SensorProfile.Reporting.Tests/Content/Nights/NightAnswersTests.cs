using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Tests.Content.Nights;

public class NightAnswersTests
{
    [Fact] // the report's numbers of darks are those of a plan for the same stack, sky by sky
    public void TheNumbersOfDarksAreThoseOfThePlan()
    {
        CameraProfile profile = TarnProfile.Build();
        NightAnswers answers = NightAnswers.Of(profile, profile.Modes[0]);
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
