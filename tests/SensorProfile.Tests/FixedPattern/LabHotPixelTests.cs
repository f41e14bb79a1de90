using System.Text.Json;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern;

/// <summary>Hot pixels of two real cameras inside the accept intervals of the data's own expected.json.</summary>
public sealed class LabHotPixelTests(ITestOutputHelper output)
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
            Unlit = PixelMoments.Of(lab.Open("bias/*.fits")),
        };
        PatternResult result = PatternMeasurement.Of(input, null)!;
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

    /// <summary>
    /// The published doubling of the 14-bit camera's hot pixels, 5.89 K, accepted from 4.7 to 7.7 K: its temperature
    /// fell through the session together with the exposures.
    /// </summary>
    [DataTheory("lab-14bit"), InlineData("lab-14bit")]
    public void TheHotPixelsDoubleAsPublished(string folder)
    {
        using var lab = new Lab(folder);
        JsonElement published = lab.Expected.GetProperty("hot_pixel_doubling");
        double[] seconds = [10, 30, 50, 70, 100];
        ILookup<string, double> readings = published
            .GetProperty("relative_rate")
            .EnumerateArray()
            .ToLookup(f => f.GetProperty("group").GetString()!, f => f.GetProperty("ccd_temp_c").GetDouble());
        DarkExposure[] exposures =
        [
            .. seconds.Select(t => new DarkExposure(
                t,
                lab.Open(FormattableString.Invariant($"dark/dark_{t:000}s_*.fits"))
            )
            {
                Readings = [.. readings[FormattableString.Invariant($"dark_{t:000}s")].Select(r => (double?)r)],
            }),
        ];
        var input = new PatternInput
        {
            Width = 400,
            Height = 300,
            Mosaic = Lab.Positions,
            Gains = [0.235436, 0.235149, 0.235541, 0.234642],
            CodeStep = 4,
            TopCode = 65532,
            Series = [new DarkSeries(33.4, 0, exposures)],
            ReferenceTemperature = 33.4,
            Unlit = PixelMoments.Of(lab.Open("bias/*.fits")),
        };
        PatternResult result = PatternMeasurement.Of(input, null)!;
        Measurement doubling = HotPixelThermometer
            .Of(input, result.Maps, result.Defects)!
            .DoublingByReadings(input.Series[0])!;
        output.WriteLine(
            FormattableString.Invariant(
                $"{doubling.Value:F2} ± {doubling.StandardUncertainty:F2} °C from {doubling.Samples} frames"
            )
        );
        Lab.AssertAccepted(published.GetProperty("all_frames"), doubling.Value);
        Assert.InRange(doubling.StandardUncertainty, 0.2, 2); // published: 1.0
    }
}
