using SensorProfile.Drift.Identity;

namespace SensorProfile.Tests.Drift.Identity;

public sealed class HotPixelVotesTests
{
    /// <summary>
    /// Sixty hot pixels of which half healed, with as many new ones: every orientation and shift is found.
    /// </summary>
    [Fact]
    public void EveryOrientationAndShiftIsFound()
    {
        var random = new Random(1);
        foreach (FrameOrientation orientation in Enum.GetValues<FrameOrientation>())
        foreach ((int dx, int dy) in ((int, int)[])[(0, 0), (1, 0), (-4, 4), (3, -2)])
        {
            var frame = new FrameAlignment(orientation, 0, 0, dx, dy);
            (int w, int h) = frame.SwapsSides ? (90, 120) : (120, 90);
            frame = frame with { Width = w, Height = h };
            (int X, int Y)[] later = [.. Draw(random, 60, w, h)];
            (int X, int Y)[] earlier =
            [
                .. later.Take(30).Select(p => frame.Moved(p.X, p.Y)),
                .. Draw(random, 30, 120, 90),
            ];
            AlignmentVotes found = HotPixelVotes.Find(new HotPixelSet(w, h, later), new HotPixelSet(120, 90, earlier));
            Assert.True(found.Found);
            Assert.Equal(frame, found.Alignment);
        }
    }

    /// <summary>
    /// Two sensors: stated chance 0.1 %, so none of 200 pairs expected (P of one or more 18 %, of three or more 0.1 %);
    /// with hot pixels crowded along a glowing edge alike in both, too.
    /// </summary>
    [Theory]
    [InlineData(300, 0)]
    [InlineData(300, 300)]
    [InlineData(8, 0)]
    public void AnotherSensorsHotPixelsMeetByChanceOnly(int everywhere, int inTheGlow)
    {
        var random = new Random(2);
        HotPixelSet Sensor() =>
            new(
                200,
                150,
                [
                    .. Draw(random, everywhere, 200, 150)
                        .Concat(Draw(random, inTheGlow, 40, 150).Select(p => (p.X * p.X / 40, p.Y)))
                        .Distinct(),
                ]
            );
        Assert.InRange(Enumerable.Range(0, 200).Count(_ => HotPixelVotes.Find(Sensor(), Sensor()).Found), 0, 2);
    }

    private static (int X, int Y)[] Draw(Random random, int count, int width, int height) =>
        Enumerable
            .Range(0, 10 * count)
            .Select(_ => (random.Next(width), random.Next(height)))
            .Distinct()
            .Take(count)
            .ToArray();
}
