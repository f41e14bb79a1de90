using SensorProfile.Drift.Patches;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.Patches;

public sealed class PatchScanTests(ITestOutputHelper output)
{
    /// <summary>
    /// Scattered points: a patch at p ≤ 1 % in at most 1 % of layouts; 5 or more of 100 would have a probability of 0.3
    /// %.
    /// </summary>
    [Fact]
    public void ScatteredPixelsMakeNoPatch()
    {
        int found = Enumerable
            .Range(0, 100)
            .Count(seed => PatchScan.Find(Scattered(60, seed), 640, 480, 199, 1).Count > 0);
        output.WriteLine($"false patches: {found} of 100");
        Assert.InRange(found, 0, 4);
    }

    [Fact]
    public void APatchIsFoundAndOutlined()
    {
        var random = new Random(5);
        List<OutlinePoint> points = Scattered(90, 3);
        for (int i = 0; i < 40; i++)
        {
            (double r, double a) = (20 * Math.Sqrt(random.NextDouble()), 2 * Math.PI * random.NextDouble());
            points.Add(new OutlinePoint((int)(52 + r * Math.Cos(a)), (int)(432 + r * Math.Sin(a))));
        }
        GrowingPatch patch = Assert.Single(PatchScan.Find(points, 640, 480, 199, 1));
        Assert.InRange(double.Hypot(patch.X - 52, patch.Y - 432), 0, 6);
        Assert.InRange(patch.Radius, 14, 24); // 90 % of a disc of 20 px lie within 19 px
        Assert.InRange(patch.NewPixels, 36, 44);
        Assert.Equal("near the lower left corner", patch.Where);
        Assert.All(patch.Outline, q => Assert.InRange(double.Hypot(q.X - 52, q.Y - 432), 5, 30));
    }

    [Fact]
    public void TheSameSeedGivesTheSameAnswer()
    {
        OutlinePoint[] points =
        [
            .. Scattered(30, 8),
            .. Enumerable.Range(0, 12).Select(i => new OutlinePoint(300 + i % 4, 200 + i / 4)),
        ];
        GrowingPatch first = Assert.Single(PatchScan.Find(points, 640, 480, 99, 4)),
            again = Assert.Single(PatchScan.Find(points, 640, 480, 99, 4));
        Assert.Equal((first.X, first.Y, first.Radius, first.P), (again.X, again.Y, again.Radius, again.P));
        Assert.Equal(first.Outline, again.Outline);
    }

    /// <summary>
    /// Thirds of a frame of 640 × 480 px; the first row of the file is the upper one, as for glow and defects.
    /// </summary>
    [Theory]
    [InlineData(52, 48, "near the upper left corner")]
    [InlineData(52, 432, "near the lower left corner")]
    [InlineData(600, 432, "near the lower right corner")]
    [InlineData(320, 10, "near the upper edge")]
    [InlineData(600, 240, "near the right edge")]
    [InlineData(320, 240, "near the centre")]
    public void APlaceIsNamedAsThePicturesShowIt(double x, double y, string where) =>
        Assert.Equal(where, PatchOutline.Where(x, y, 640, 480));

    [Fact]
    public void TheHullOfASquareIsItsCorners() =>
        Assert.Equal(
            4,
            PatchOutline
                .Hull([
                    .. from x in Enumerable.Range(1, 5) from y in Enumerable.Range(1, 5) select new OutlinePoint(x, y),
                ])
                .Count
        );

    private static List<OutlinePoint> Scattered(int count, int seed)
    {
        var random = new Random(400 + seed);
        return
        [
            .. Enumerable.Range(0, count).Select(_ => new OutlinePoint(random.Next(640) + 1, random.Next(480) + 1)),
        ];
    }
}
