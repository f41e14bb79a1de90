using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.Defects;

/// <summary>
/// Where the defects are, the hot-pixel curve at other temperatures, and the means of lines with their spectra.
/// </summary>
public sealed class PlacesAndCurvesTests(ITestOutputHelper output)
{
    [Fact]
    public void TheCurveAtAnotherTemperatureCountsWhatIsHotThere()
    {
        CameraDescription camera = PatternNight.Camera(PatternNight.Shots(6, -20, -10, 0)) with
        {
            Width = 320,
            Height = 240,
            HotPixels = new HotPixels
            {
                Share = 0.01,
                Activation = 0.9,
                ActivationSpread = 0.05,
                Distribution = new() { Minimum = 1, Maximum = 30 },
            },
        };
        var night = new PatternNight(camera);
        PatternResult result = night.Measure();
        Assert.Equal(3, result.Profile.HotPixelCurves.Count);
        foreach (HotPixelCurveAt curve in result.Profile.HotPixelCurves)
        {
            float[] truth = night.TrueRate(curve.Temperature);
            foreach (HotPixelCount point in curve.Counts.Where(c => c.Count >= 30))
            {
                int expected = truth.Count(r => r > point.Threshold);
                output.WriteLine(
                    FormattableString.Invariant(
                        $"{curve.Temperature} °C, above {point.Threshold}: {point.Count}, truth {expected}"
                    )
                );
                // The same pixels are counted, so counting noise cancels; rates of single pixels are off by a few per
                // cent, and so is the curve's abscissa.
                Assert.InRange(point.Count, 0.9 * expected - 5, 1.1 * expected + 5);
            }
        }
    }

    [Fact]
    public void HotPixelsAreCountedWhereTheyAre()
    {
        var classes = new DefectClass[60 * 30];
        foreach ((int x, int y) in new[] { (0, 0), (59, 29), (58, 29), (59, 28), (30, 15) })
            classes[y * 60 + x] = DefectClass.Hot;
        for (int y = 0; y < 30; y++)
            classes[y * 60 + 41] = DefectClass.Hot | DefectClass.Line;
        DefectPlaces places = DefectPlacing.Place(new DefectMap(classes, new DefectCounts(), [41], []), 60, 30);
        Assert.Equal(
            ["upper left: 1", "centre: 1", "lower right: 3"],
            places.Areas.Where(a => a.Hot > 0).Select(a => $"{a.Where}: {a.Hot}")
        );
        Assert.All(places.Areas, a => Assert.Equal(200, a.Pixels));
        // the mean of 59, 60, 60 and of 30, 30, 29, rounded
        Assert.Equal(new DefectCluster(60, 30, 3), Assert.Single(places.Clusters));
        Assert.Equal([42], places.Columns);
        Assert.Empty(places.Rows);
    }

    [Fact]
    public void ALongFramesSpectrumKeepsItsPeakWhenItIsReduced()
    {
        // Amplitude 0.3 ADU, period 7.5 px: 400 waves in 3000 columns, exactly one frequency of the spectrum.
        double[] means =
        [
            .. Enumerable
                .Range(0, 3000)
                .Select(i => 500 + 0.3 * Math.Sin(2 * Math.PI * i / 7.5) + 0.02 * Math.Sin(i * i * 0.7)),
        ];
        LineProfile profile = LineSpectrum.Profile(means, PatternDirection.Across)!;
        Assert.InRange(profile.Deviations.Count, 256, 512);
        Assert.InRange(profile.Periods.Count, 256, 512);
        int peak = Enumerable.Range(0, profile.Amplitudes.Count).MaxBy(i => profile.Amplitudes[i]);
        Assert.Equal(7.5, profile.Periods[peak], 4);
        Assert.InRange(profile.Amplitudes[peak], 0.29, 0.31);
        Assert.True(profile.Amplitudes[peak] > profile.Limits[peak]);
        Assert.Equal(
            1,
            Enumerable.Range(0, profile.Amplitudes.Count).Count(i => profile.Amplitudes[i] > profile.Limits[i])
        );
        Assert.Equal(0, profile.Deviations.Average(), 3);
    }
}
