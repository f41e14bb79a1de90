using SensorProfile.Frames;
using SensorProfile.Frames.Sets;

namespace SensorProfile.Tests.Frames.Sets;

public class SetPointsTests
{
    // six lights at SET-TEMP −9.0, whose readings scatter, became two sets and two masters of 8 frames
    private static readonly double[] scatter = [-9.6, -9.5, -9.4, -8.6, -8.5, -8.4];

    [Fact]
    public void SetsOfOneHeldSetPointAreOne()
    {
        FrameSet cold = Lights(-9, scatter[..3]),
            warm = Lights(-9, scatter[3..]);
        FrameSet joined = Assert.Single(SetPoints.Join([cold, warm]));
        Assert.Equal(6, joined.Frames.Count);
        Assert.Equal(-9.0, joined.TemperatureCelsius!.Value, 1e-12); // mean of the six readings
        Assert.Equal(-9.0, SetPoints.HeldBy(joined.Frames));
        Assert.Equal(Enumerable.Repeat<double?>(-9, 6), SetPoints.TemperaturesOf(joined.Frames));
        Assert.Empty(SetPoints.NotHeld([cold, warm]));
    }

    // "the frames were split into sets" was still said after they had been joined
    [Fact]
    public void TheSurveysDriftIsStaleOnceTheSetsAreJoined()
    {
        FrameSet cold = Lights(-9, scatter[..3]),
            warm = Lights(-9, scatter[3..]),
            drifting = Lights(-20, [-19, -17, -15]);
        Finding Drift(IEnumerable<Frame> frames) =>
            new(FindingCodes.TemperatureDrift, Severity.Warning, "It drifted.", [.. frames.Select(f => f.Name)]);
        Finding held = Drift([.. cold.Frames, .. warm.Frames]),
            real = Drift(drifting.Frames.Select(f => f with { Name = "drifting " + f.Name }));
        Assert.Equal([real], SetPoints.StillTrue([held, real], SetPoints.Join([cold, warm, drifting])));
    }

    [Fact]
    public void ASetPointThatWasNotHeldIsSaidAndTheReadingsCount()
    {
        FrameSet cold = Lights(-9, [-9, -8.8, -8.6]),
            warm = Lights(-9, [-6.5, -6, -5.5]);
        Assert.Equal(2, SetPoints.Join([cold, warm]).Count);
        Assert.Equal([-9, -8.8, -8.6, -6.5, -6, -5.5], SetPoints.TemperaturesOf([.. cold.Frames, .. warm.Frames]));
        Finding finding = Assert.Single(SetPoints.NotHeld([cold, warm]));
        Assert.Equal(
            "The cooler did not hold −9 °C: 6 frames read −9 to −5.5 °C; their readings count, not the set point.",
            finding.Message
        );
    }

    [Fact]
    public void OtherSetPointsAndSilentHeadersStayAsTheyAre()
    {
        FrameSet[] sets = [Lights(-9, scatter[..3]), Lights(-10, [-10, -9.9]), Lights(null, [-9, -9.1])];
        Assert.Equal(sets, SetPoints.Join(sets));
        Assert.Null(SetPoints.HeldBy(sets[2].Frames));
    }

    private static FrameSet Lights(double? setPoint, double[] readings)
    {
        FrameSet set = SensorProfile.Tests.Decisions.Sets.Of(FrameKind.Light, readings.Length, 300, readings.Average());
        return set with
        {
            Frames =
            [
                .. set.Frames.Select(
                    (f, i) => f with { TemperatureCelsius = readings[i], SetTemperatureCelsius = setPoint }
                ),
            ],
        };
    }
}
