using System.Text.Json;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.FixedPattern.DarkRates;

/// <summary>Hot pixels of two real cameras inside the accept intervals of the data's own expected.json.</summary>
public sealed class LabHotPixelTests
{
    [
        DataTheory("lab-12bit", "lab-14bit"),
        InlineData("lab-12bit", 16, new[] { 0.224011, 0.25025, 0.250054, 0.223967 }),
        InlineData("lab-14bit", 4, new[] { 0.235436, 0.235149, 0.235541, 0.234642 })
    ]
    public void CountsAboveRatesAreAccepted(string folder, int step, double[] gains)
    {
        using var lab = new Lab(folder);
        IReadOnlyList<IFrameSamples> darks = lab.Open("dark/dark_100s_*.fits");
        var input = new PatternInput
        {
            Width = 400,
            Height = 300,
            Mosaic = Lab.Positions,
            Gains = gains,
            CodeStep = step,
            TopCode = 65535 / step * step,
            Series = [new DarkSeries(33, 0, [new DarkExposure(100, darks)])],
            ReferenceTemperature = 33,
            Unlit = PixelMoments.Measure(lab.Open("bias/*.fits")),
        };
        PatternResult result = PatternMeasurement.Measure(input, null)!;
        // The reference counts the excess over the median of each filter position, which is what a typical rate of 0
        // gives here.
        foreach (
            JsonProperty threshold in lab
                .Expected.GetProperty("hot_pixels")
                .GetProperty("counts_above_e_per_s")
                .EnumerateObject()
        )
        {
            double rate = double.Parse(threshold.Name, System.Globalization.CultureInfo.InvariantCulture);
            HotPixelCount count = Assert.Single(HotPixelCurve.Count(result.Maps.Rate, [rate]));
            Lab.AssertAccepted(threshold.Value, count.Count);
        }
    }
}
