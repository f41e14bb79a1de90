using SensorProfile.Pixels.Strips;

namespace SensorProfile.Tests.Pixels.Strips;

public class StripWalkerTests
{
    [Theory, InlineData(1, 10, 1), InlineData(3, 33, 131), InlineData(2, 4001, 70)]
    public void EveryRowIsHandedOutOnceWithAllItsSamplesAndTheResultsComeInOrder(int count, int width, int height)
    {
        var frames = Enumerable
            .Range(0, count)
            .Select(k => MemorySamples.Of($"f{k}", width, height, (row, column) => k * 1000 + row * 7 + column))
            .ToArray();
        var strips = StripWalker.Walk(
            frames,
            strip =>
            {
                for (int frame = 0; frame < count; frame++)
                    Assert.Equal(frames[frame].All.AsSpan(strip.FirstRow * width, strip.Pixels), strip.Samples(frame));
                return (strip.FirstRow, strip.Rows);
            },
            new WalkOptions { Threads = 4 }
        );
        Assert.Equal(0, strips[0].FirstRow);
        Assert.All(strips.Zip(strips.Skip(1)), pair =>
            Assert.Equal(pair.First.FirstRow + pair.First.Rows, pair.Second.FirstRow)
        );
        Assert.Equal(height, strips[^1].FirstRow + strips[^1].Rows);
        Assert.All(strips.SkipLast(1), strip => Assert.True(strip.Rows % 2 == 0));
    }

    [Fact]
    public void AStripOfAThousandFramesStaysWithinItsMemory() =>
        // A row of 1000 frames is 19.2 MB at 9600 px (64 MiB hold 3.5 of them, made even) and 4 MB at 2000 px; 300
        // frames stay open and need 4 MiB only.
        Assert.Equal(
            (2, 16, 2, 64),
            (
                StripWalker.RowsPerStrip(1000, 9600, 6400),
                StripWalker.RowsPerStrip(1000, 2000, 1000),
                StripWalker.RowsPerStrip(300, 2000, 1000),
                StripWalker.RowsPerStrip(2, 6000, 4000)
            )
        );

    [Fact]
    public void ACancelledWalkStops()
    {
        using var source = new CancellationTokenSource();
        int strips = 0;
        Assert.ThrowsAny<OperationCanceledException>(() =>
            StripWalker.Walk(
                [Blank(100, 6400)],
                strip =>
                {
                    if (Interlocked.Increment(ref strips) == 3)
                        source.Cancel();
                    return 0;
                },
                new WalkOptions { Threads = 1, Cancellation = source.Token }
            )
        );
        // of 100: no strip is begun after the one that was cancelled in
        Assert.Equal(3, strips);
    }

    [Fact]
    public void AFailureComesOutAsItself() =>
        Assert.Equal(
            "here",
            Assert
                .Throws<InvalidDataException>(() =>
                    StripWalker.Walk<int>([Blank(10, 640)], _ => throw new InvalidDataException("here"))
                )
                .Message
        );

    [Fact]
    public void ProgressCountsEveryRow()
    {
        int rows = 0;
        StripWalker.Walk(
            [Blank(10, 641)],
            strip => 0,
            new WalkOptions { RowsDone = done => Interlocked.Add(ref rows, done) }
        );
        Assert.Equal(641, rows);
    }

    private static MemorySamples Blank(int width, int height) =>
        new("blank", width, height, new ushort[width * height]);
}
