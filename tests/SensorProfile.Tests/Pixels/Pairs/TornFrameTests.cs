using SensorProfile.Pixels.Pairs;

namespace SensorProfile.Tests.Pixels.Pairs;

/// <summary>Row profiles of 400 rows with a noise of 1 ADU per row, on a fixed pattern that all frames share.</summary>
public class TornFrameTests
{
    private const int Rows = 400;

    [Theory, InlineData(1), InlineData(3)]
    public void ATornFrameIsFoundAtItsRow(int tornOfSix)
    {
        var torn = TornFrame.FindAll(Profiles(6, (frame, row) => frame < tornOfSix && row >= 311 ? -60 : 0));
        Assert.Equal(
            Enumerable.Range(0, 6).Select(frame => frame < tornOfSix ? 311 : (int?)null),
            torn.Select(frame => frame?.FirstRow)
        );
        Assert.All(torn.Take(tornOfSix), frame =>
        {
            Assert.Equal(-60, frame!.Step, 5.0);
            Assert.True(frame.Significance > 20);
        });
    }

    [Theory, InlineData(6), InlineData(395)]
    public void ATearNearTheEdgeIsFound(int at) =>
        Assert.Equal(at, TornFrame.FindAll(Profiles(6, (frame, row) => frame == 2 && row >= at ? 80 : 0))[2]?.FirstRow);

    public static TheoryData<string, Func<int, int, double>> WholeFrames =>
        new()
        {
            { "nothing but noise", (_, _) => 0 },
            { "levels that jump as a whole", (frame, _) => 40 * (frame % 3) },
            { "gradients that differ", (frame, row) => frame * row * 0.2 },
            { "glow that grows", (frame, row) => (1 + 0.3 * frame) * 200 * Math.Exp(-row / 40.0) },
            { "a level that drifts within the frame", (frame, row) => 5 * Math.Sin(row / 60.0 + frame) },
            { "a few bright rows", (frame, row) => frame == 1 && row is >= 200 and < 203 ? 300 : 0 },
            { "the track of a particle over 18 rows", (frame, row) => frame == 1 && row is >= 200 and < 218 ? 30 : 0 },
            { "a step that all frames share", (_, row) => row >= 200 ? 100 : 0 },
        };

    [Theory, MemberData(nameof(WholeFrames))]
    public void WholeFramesAreNotCalledTorn(string what, Func<int, int, double> signal)
    {
        Assert.NotEmpty(what);
        Assert.All(TornFrame.FindAll(Profiles(6, signal)), Assert.Null);
    }

    [Fact]
    public void NoiseAloneNeverLooksTorn()
    {
        var torn = Enumerable.Range(0, 150).SelectMany(seed => TornFrame.FindAll(Profiles(5, (_, _) => 0, seed)));
        Assert.All(torn, Assert.Null); // 750 frames; the limit is 10 standard errors
    }

    [Fact]
    public void OneFrameAloneCannotBeJudged() =>
        Assert.Null(Assert.Single(TornFrame.FindAll(Profiles(1, (_, row) => row > 100 ? 500 : 0))));

    private static double[][] Profiles(int frames, Func<int, int, double> signal, int seed = 7)
    {
        var noise = new NormalNoise(seed);
        double[] pattern = [.. Enumerable.Range(0, Rows).Select(row => 1000 + 20 * (row % 2) + noise.Next(5))];
        return
        [
            .. Enumerable
                .Range(0, frames)
                .Select(frame => pattern.Select((level, row) => level + signal(frame, row) + noise.Next()).ToArray()),
        ];
    }
}
