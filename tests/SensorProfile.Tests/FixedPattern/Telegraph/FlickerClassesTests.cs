using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.FixedPattern.Telegraph;

/// <summary>Pixels that jump between levels, put into classes: numbers by hand.</summary>
public sealed class FlickerClassesTests
{
    [Fact]
    public void APixelScattersByItsStepAndItsShareOfTime()
    {
        // Two levels, half of the time up: 20·√¼ = 10 e-; the step is known to 5 %, and so is the scatter. 1/τ = 1/30 +
        // 1/60 s.
        FlickerClass two = Assert.Single(
            FlickerClasses.Group([Fit(20, 0.5) with { StepUncertainty = 1, Dwell = new DwellTimes(30, 60, 1.2) }])
        );
        Assert.Equal((false, 1L, 20.0), (two.Thermal, two.Pixels, two.MemorySeconds!.Value));
        Assert.Equal(10, two.Deviation.Value, 1e-12);
        Assert.Equal(0.5, two.Deviation.StandardUncertainty, 1e-12);
        Assert.Equal("e-", two.Deviation.Unit);
        // Three levels are two such steps: 20·√(2·0.2·0.8) = 11.31 e-.
        Assert.Equal(
            20 * Math.Sqrt(0.32),
            Assert.Single(FlickerClasses.Group([Fit(20, 0.2) with { Levels = 3 }])).Deviation.Value,
            1e-12
        );
    }

    [Fact]
    public void EveryPixelStandsInOneClassOfItsKindWeakestFirst()
    {
        TelegraphFit[] fits =
        [
            .. Enumerable.Range(1, 13).Select(i => Fit(2 * i, 0.5)),
            .. Enumerable.Range(1, 3).Select(i => Fit(0.1 * i, 0.5) with { Thermal = true }),
        ];
        IReadOnlyList<FlickerClass> classes = FlickerClasses.Group(fits.Reverse());
        Assert.Equal([2L, 3, 2, 3, 3, 1, 1, 1], classes.Select(c => c.Pixels));
        Assert.Equal([false, false, false, false, false, true, true, true], classes.Select(c => c.Thermal));
        Assert.Equal(["e-", "e-/px/s"], classes.Select(c => c.Deviation.Unit).Distinct());
        // scatters of 1 and 2 e-
        Assert.Equal(Math.Sqrt((1 + 4) / 2.0), classes[0].Deviation.Value, 1e-12);
        Assert.Equal(
            Enumerable.Range(1, 13).Sum(i => i * i),
            classes.Take(5).Sum(c => c.Pixels * c.Deviation.Value * c.Deviation.Value),
            1e-9
        );
        Assert.All(classes, c => Assert.Null(c.MemorySeconds));
    }

    [Fact]
    public void WithoutSuchPixelsThereAreNoClasses() => Assert.Empty(FlickerClasses.Group([]));

    private static TelegraphFit Fit(double step, double share) =>
        new()
        {
            LogChance = -50,
            Levels = 2,
            Thermal = false,
            Step = step,
            StepUncertainty = 0.1,
            LargestStep = step,
            UpperShare = share,
            Switches = 5,
        };
}
