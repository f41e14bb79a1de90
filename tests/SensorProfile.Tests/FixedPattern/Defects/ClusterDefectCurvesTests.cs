using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation.Parameters.Sensor;
using Xunit.Abstractions;
using static System.FormattableString;

namespace SensorProfile.Tests.FixedPattern.Defects;

/// <summary>Completeness and purity of clusters of hot pixels, against their size and their rate.</summary>
public sealed class ClusterDefectCurvesTests(ITestOutputHelper output)
{
    private const int Clusters = 20;
    private static readonly DefectThresholds thresholds = new() { HotRate = 0.2, WarmRate = 0.05 };

    [Fact]
    public void ClustersAgainstSizeAndRate()
    {
        output.WriteLine("pixels   rate/threshold   true   found   complete   pure   pixels found of true");
        foreach (int size in new[] { 2, 3, 4, 9, 20 })
        foreach (double rate in new[] { 0.5, 0.9, 1.1, 1.5, 2.5 })
        {
            var night = new PatternNight(
                PatternNight.Camera(PatternNight.Shots(5, -10)) with
                {
                    HotClusters = new HotClusters
                    {
                        Count = Clusters,
                        Size = size,
                        Rate = rate * thresholds.HotRate,
                    },
                },
                69
            );
            HashSet<int>[] real =
            [
                .. night.Truth.HotClusters.Select(c => c.Pixels.Select(p => (p.Y - 1) * 160 + p.X - 1).ToHashSet()),
            ];
            PatternResult result = PatternMeasurement.Measure(night.Input() with { Thresholds = thresholds }, null)!;
            IReadOnlyList<int>[] found =
            [
                .. PixelClusters.Find(160, 120, i => result.Defects.Classes[i].HasFlag(DefectClass.Hot)),
            ];
            double complete = real.Count(c => found.Any(f => f.Any(c.Contains))) / (double)Clusters,
                pixels = found.Sum(f => f.Count) / (double)(Clusters * size);
            int wrong = found.Count(f => !real.Any(c => f.All(c.Contains)));
            output.WriteLine(
                Invariant($"{size, 6} {rate, 16:0.0} {Clusters, 6} {found.Length, 7} {complete, 10:0.000} ")
                    + Invariant($"{(found.Length == 0 ? 1 : (found.Length - wrong) / (double)found.Length), 6:0.000} ")
                    + Invariant($"{pixels, 8:0.000}")
            );
            // A pixel's rate is good to 0.017 e-/px/s at half the threshold, 0.022 at 1.5 and 0.026 at 2.5 of it:
            // 6, 4.5 and 11 times less than they are from the threshold of 0.2.
            // So all pixels of a cluster count, or none, and with them the cluster, if it has the three pixels that
            // make one.
            if (rate >= 1.5 && size >= 3)
            {
                Assert.Equal(1, complete);
                Assert.InRange(pixels, 0.98, 1);
                Assert.Equal(Clusters, result.Defects.Counts.Clusters);
            }
            if (rate <= 0.5 || size < 3)
                Assert.Empty(found);
            Assert.Equal(0, wrong);
            Assert.Equal(found.Length, result.Defects.Counts.Clusters);
            Assert.All(result.Profile.Places!.Clusters, c =>
                Assert.Contains(real, r =>
                    r.Contains((c.Y - 1) * 160 + c.X - 1)
                    || r.Min(p => Math.Abs(p % 160 + 1 - c.X) + Math.Abs(p / 160 + 1 - c.Y)) <= 2
                )
            );
        }
    }

    /// <summary>
    /// Hot pixels strewn at random touch by chance. Of 20 forms of three touching pixels and 110 of four (counted by
    /// brute force here for three) the share p³ and p⁴ is occupied.
    /// </summary>
    [Theory, InlineData(0.003), InlineData(0.01), InlineData(0.03)]
    public void StrewnHotPixelsMakeAsManyGroupsAsChanceSays(double share)
    {
        const int Width = 1000,
            Height = 1000;
        var random = new Random(70);
        bool[] hot = [.. Enumerable.Range(0, Width * Height).Select(_ => random.NextDouble() < share)];
        int found = PixelClusters.Find(Width, Height, i => hot[i]).Count(c => c.Count == 3);
        double expected = Width * Height * Triples().Sum(t => Math.Pow(share, 3) * Math.Pow(1 - share, t.Neighbours));
        output.WriteLine(
            FormattableString.Invariant($"share {share}: {found} groups of three, {expected:0.0} expected by chance")
        );
        Assert.Equal(20, Triples().Count);
        Assert.InRange(found, expected - 4 * Math.Sqrt(expected) - 1, expected + 4 * Math.Sqrt(expected) + 1);
    }

    /// <summary>
    /// Every form of three pixels that touch by an edge or a corner, with the number of pixels around it.
    /// </summary>
    private static List<(int[] Form, int Neighbours)> Triples()
    {
        var forms = new List<(int[], int)>();
        int[] cells = [.. Enumerable.Range(0, 9 * 9)];
        // Their first pixel, row by row, stands at column 4 of row 2.
        const int First = 2 * 9 + 4;
        foreach (int second in cells.Where(c => c > First && c / 9 <= 4))
        foreach (int third in cells.Where(c => c > second && c / 9 <= 4))
        {
            int[] form = [First, second, third];
            bool[] set = [.. cells.Select(form.Contains)];
            if (PixelClusters.Find(9, 9, i => set[i]).Count != 1)
                continue;
            forms.Add(
                (
                    form,
                    cells.Count(c =>
                        !set[c] && form.Any(f => Math.Abs(f / 9 - c / 9) <= 1 && Math.Abs(f % 9 - c % 9) <= 1)
                    )
                )
            );
        }
        return forms;
    }
}
