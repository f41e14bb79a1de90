using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Tests.FixedPattern.RowsAndColumns;

/// <summary>Rows, columns and pixels apart.</summary>
public sealed class SpatialSplitTests
{
    // Worked by hand from the equations with population variances.
    private static readonly double[] image =
    [
        10,
        12,
        11,
        15,
        12,
        11,
        14,
        12,
        15,
        13,
        9,
        12,
        10,
        14,
        10,
        10,
        13,
        13,
        16,
        11,
    ];

    private static SpatialSplit Split(double[] values, int columns) =>
        SpatialSplit.Split(values.Length / columns, columns, (row, column) => values[row * columns + column]);

    [Fact]
    public void AWorkedExample()
    {
        SpatialSplit split = Split(image, 5);
        Assert.Equal(3.6275, split.Total, 10);
        Assert.Equal(2.66727273, split.Column, 8);
        Assert.Equal(0.46931818, split.Row, 8);
        Assert.Equal(0.49090909, split.Pixel, 8);
        Assert.Equal(split.Total, split.Row + split.Column + split.Pixel, 12);
    }

    [Fact]
    public void TurningTheImageSwapsRowsAndColumns()
    {
        double[] turned = [.. Enumerable.Range(0, 20).Select(i => image[i % 4 * 5 + i / 4])];
        SpatialSplit split = Split(image, 5),
            other = Split(turned, 4);
        Assert.Equal(split.Row, other.Column, 12);
        Assert.Equal(split.Column, other.Row, 12);
        Assert.Equal(split.Pixel, other.Pixel, 12);
    }

    [Fact]
    public void APureColumnPatternIsNothingElse()
    {
        SpatialSplit split = Split([.. Enumerable.Range(0, 60).Select(i => Math.Sin(i % 10))], 10);
        Assert.Equal(0, split.Row, 12);
        Assert.Equal(0, split.Pixel, 12);
        Assert.Equal(split.Total, split.Column, 12);
    }

    [Fact]
    public void ARegularPatternIsNamedAndNoiseIsNot()
    {
        var random = RandomStream.For(5, Purpose.HotPixels);
        int alarms = 0;
        for (int trial = 0; trial < 200; trial++)
        {
            double[] noise = new double[512];
            for (int i = 0; i < noise.Length; i++)
                noise[i] = random.NextNormal();
            alarms += LineSpectrum.Periods(noise, PatternDirection.Across).Count;
        }
        // 200 spectra at 1e-6 each; the level from 33 neighbours is known to 20 %, which raises that
        Assert.InRange(alarms, 0, 1);
        double[] pattern = new double[512];
        for (int i = 0; i < pattern.Length; i++)
            pattern[i] = random.NextNormal() + 1.5 * Math.Cos(2 * Math.PI * i / 8);
        PatternPeriod found = Assert.Single(LineSpectrum.Periods(pattern, PatternDirection.Across));
        Assert.Equal(8, found.Period, 9);
        Assert.InRange(found.Amplitude, 1.3, 1.7); // noise of an amplitude: √(2/512) = 0.06
    }
}
