using SensorProfile.Desk.Deciding;
using SensorProfile.Desk.Tests.Running;

namespace SensorProfile.Desk.Tests.Deciding;

public class SliderStepsTests
{
    [Fact]
    public void EverySliderRisesAndStopsWhereTheFormBegins()
    {
        NightForm form = new(new AnsweringDoor());
        (IReadOnlyList<double> Steps, double Begins)[] sliders =
        [
            (SliderSteps.Exposures, form.Exposure),
            (SliderSteps.Skies, form.Sky),
            (SliderSteps.Lights, form.Lights),
            (SliderSteps.Dithers, form.Dithers),
            (SliderSteps.Air, form.Ambient),
            (SliderSteps.Reaches, form.Reach),
            (SliderSteps.Losses, form.Loss),
        ];
        foreach ((IReadOnlyList<double> steps, double begins) in sliders)
        {
            Assert.Contains(begins, steps);
            Assert.All(steps.Zip(steps.Skip(1)), pair => Assert.True(pair.First < pair.Second));
        }
        Assert.Equal((0.01, 50), (SliderSteps.Skies[0], SliderSteps.Skies[^1]));
        Assert.Equal([1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20], SliderSteps.Dithers.Take(11));
    }
}
