using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.Pixels;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation.Randomness;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.RowsAndColumns;

/// <summary>Steps and outlying lines in profiles; the split of a synthetic response.</summary>
public sealed class BoundarySearchTests(ITestOutputHelper output)
{
    private static double[] Noise(ref RandomStream random, int lines)
    {
        double[] profile = new double[lines];
        for (int i = 0; i < lines; i++)
            profile[i] = random.NextNormal();
        return profile;
    }

    [Theory, InlineData(160), InlineData(1000)]
    public void AProfileWithoutAStepShowsNone(int lines)
    {
        var random = RandomStream.For(41, Purpose.HotPixels);
        int alarms = 0,
            outliers = 0;
        for (int trial = 0; trial < 300; trial++)
        {
            double[] profile = Noise(ref random, lines);
            // a gradient and a bend, as light has them
            for (int i = 0; i < lines; i++)
                profile[i] += 30.0 * i / lines - 20 * Math.Pow((double)i / lines - 0.5, 2);
            alarms += BoundarySearch.Find(profile).Count;
            outliers += LineOutliers.Find(profile, 0).Count;
        }
        output.WriteLine($"{lines} lines: {alarms} steps and {outliers} outlying lines in 300 profiles");
        Assert.InRange(alarms, 0, 1); // 1e-4 each: 0.03 expected
        Assert.InRange(outliers, 0, 1);
    }

    [Fact]
    public void AStepIsFoundWhereItIsWithItsUncertainty()
    {
        var random = RandomStream.For(42, Purpose.HotPixels);
        var z = new List<double>();
        int misplaced = 0;
        for (int trial = 0; trial < 200; trial++)
        {
            double[] profile = Noise(ref random, 600);
            for (int i = 300; i < 600; i++)
                profile[i] += 5;
            IReadOnlyList<BoundarySearch.Found> found = BoundarySearch.Find(profile);
            if (found.Count != 1)
                continue;
            if (Math.Abs(found[0].At - 300) > 1)
                misplaced++;
            z.Add((found[0].Step - 5) / found[0].Uncertainty);
        }
        output.WriteLine(
            $"{z.Count} of 200 found alone, {misplaced} misplaced, z {z.Average():0.00}, inside ±1.96: "
                + $"{z.Count(v => Math.Abs(v) < 1.96)}"
        );
        // u = √(8/64)·σ = 0.35 σ: a step of 5 σ is 14 u. The place is free to follow the noise, which raises the step a
        // little.
        Assert.InRange(z.Count, 198, 200);
        Assert.InRange(misplaced, 0, 2);
        Assert.InRange(z.Average(), -0.3, 0.6);
        Assert.InRange(z.Count(v => Math.Abs(v) < 1.96) / (double)z.Count, 0.9, 1);
    }

    [Fact]
    public void AStepMakesNoDefectOfTheLinesBesideItAndADefectNoStep()
    {
        var random = RandomStream.For(43, Purpose.HotPixels);
        double[] step = Noise(ref random, 400),
            line = Noise(ref random, 400);
        for (int i = 200; i < 400; i++)
            step[i] += 50;
        line[120] += 200;
        line[121] -= 90;
        Assert.Empty(LineOutliers.Find(step, 0));
        Assert.Equal([120, 121], LineOutliers.Find(line, 0).Select(l => l.Line));
        Assert.Empty(BoundarySearch.Find(line));
    }

    [Fact]
    public void TheResponseSplitsIntoItsParts()
    {
        const int Width = 320,
            Height = 240;
        var random = RandomStream.For(44, Purpose.HotPixels);
        double[] columns = Noise(ref random, Width),
            rows = Noise(ref random, Height);
        float[] flat = new float[Width * Height];
        for (int i = 0; i < flat.Length; i++)
        {
            double x = (i % Width - 159.5) / 160,
                y = (i / Width - 119.5) / 120;
            flat[i] = (float)(
                500
                + 10000
                    * (1 - 0.15 * (x * x + y * y))
                    * (1 + 0.005 * columns[i % Width] + 0.003 * rows[i / Width] + 0.01 * random.NextNormal())
            );
        }
        float[] response = SmoothLight.Response(flat, null, [500], Width, ColourMosaic.Of(null))!;
        PatternStructure structure = ResponseStructure.Measure(response, Width, ColourMosaic.Of(null), [0]);
        output.WriteLine(
            $"total {structure.Total} row {structure.Row} column {structure.Column} pixel {structure.Pixel}"
        );
        double Deviation(double[] values) =>
            Math.Sqrt(values.Sum(v => v * v) / values.Length - Math.Pow(values.Average(), 2));
        // The truth of this very sensor. A row's mean has a noise of 1 %/√320 = 0.056 % of its own, which shifts the
        // spread of 240 rows by 0.056/√240 = 0.0036 %; a column's 0.065 %/√320 =
        // 0.0036 %; single pixels 1 %/√(2·76800) = 0.0026 %: four of each.
        Near(structure.Row!, 0.3 * Deviation(rows), 0.0145);
        Near(structure.Column!, 0.5 * Deviation(columns), 0.0145);
        Near(structure.Pixel!, 1, 0.0104);
        Assert.Equal(
            Math.Pow(structure.Total!.Value, 2),
            Math.Pow(structure.Row!.Value, 2)
                + Math.Pow(structure.Column!.Value, 2)
                + Math.Pow(structure.Pixel!.Value, 2),
            8
        );
        static void Near(Measurement found, double truth, double limit) =>
            Assert.InRange(found.Value, truth - limit, truth + limit);
    }
}
