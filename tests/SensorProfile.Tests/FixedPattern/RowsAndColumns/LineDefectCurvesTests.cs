using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.RowsAndColumns;

/// <summary>Completeness and purity of columns and rows that stand out in the dark, against their rate.</summary>
public sealed class LineDefectCurvesTests(ITestOutputHelper output)
{
    private static readonly DefectThresholds thresholds = new() { HotRate = 0.2, WarmRate = 0.05 };

    [Theory, InlineData(false), InlineData(true)]
    public void LinesAgainstTheirRate(bool rows)
    {
        double least = thresholds.WarmRate / 4;
        output.WriteLine(rows ? "rows" : "columns");
        output.WriteLine(DefectCurve.Heading("excess/threshold"));
        foreach (double size in new[] { 0, 0.25, 0.5, 1, 1.5, 2, 4 })
        {
            var lines = new BadLines { Count = size > 0 ? 6 : 0, Rate = size * least };
            CameraDescription camera = PatternNight.Camera(PatternNight.Shots(5, -10));
            var night = new PatternNight(
                rows ? camera with { BadRows = lines } : camera with { BadColumns = lines },
                62
            );
            HashSet<int> real =
            [
                .. rows ? night.Truth.BadRows.Select(r => r.Y - 1) : night.Truth.BadColumns.Select(c => c.X - 1),
            ];
            DefectMap defects = PatternMeasurement
                .Measure(night.Input() with { Thresholds = thresholds }, null)!
                .Defects;
            IReadOnlyList<int> found = rows ? defects.Rows : defects.Columns;
            double complete = DefectCurve.Line(output, size, real, [.. found]);
            // The second half of every line is bad, 60 or 80 pixels: their median is good to 1.25·0.012/√60 = 0.002
            // e-/px/s, and 7 of that are the threshold of 0.0125. Twice as much lies
            // 6 standard deviations above, half of it 3 below.
            if (size >= 2)
                Assert.Equal(1, complete);
            if (size <= 0.5)
                Assert.Empty(found);
            Assert.Equal(0, found.Count(l => !real.Contains(l)));
            Assert.Empty(rows ? defects.Columns : defects.Rows);
        }
    }
}
