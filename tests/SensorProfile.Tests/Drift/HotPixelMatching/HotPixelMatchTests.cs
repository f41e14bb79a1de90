using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.HotPixelMatching;

public sealed class HotPixelMatchTests(ITestOutputHelper output)
{
    private const double Threshold = 0.05;

    private static readonly SyntheticMaps Sensor = new();

    /// <summary>
    /// Nothing changed: a false new or healed pixel in 5 % of comparisons, so at most 4 in 20 (probability of more: 0.3
    /// %).
    /// </summary>
    [Fact]
    public void AnUnchangedSensorHasNoNewAndNoHealedPixels()
    {
        int with = 0;
        for (int night = 0; night < 20; night++)
        {
            HotPixelDrift drift = Compare(Sensor.Measure(100 + night), Sensor.Measure(200 + night));
            Assert.True(drift.Kept > 200);
            Assert.Empty(drift.Patches);
            if (drift.New + drift.Healed > 0)
                with++;
        }
        output.WriteLine($"comparisons with a false new or healed pixel: {with} of 20");
        Assert.InRange(with, 0, 4);
    }

    [Fact]
    public void NewAndHealedPixelsAreFound()
    {
        Dictionary<int, double> born = Enumerable.Range(0, 40).ToDictionary(k => 1000 + 1871 * k, k => 0.3 + 0.05 * k);
        HotPixelDrift drift = Compare(Sensor.Measure(1), Sensor.Measure(2, born: born, healed: 15));
        Assert.Equal(40, drift.New);
        Assert.Equal(
            born.Keys.Order().Select(i => (i % Sensor.Width + 1, i / Sensor.Width + 1)),
            drift.Pixels.Where(p => p.Change == PixelChange.New).Select(p => (p.X, p.Y))
        );
        Assert.InRange(drift.Healed, 12, 15); // those near the threshold cannot be told from noise
        Assert.Equal(40 / 0.0768, drift.NewPerYear!.Value, 9);
    }

    [Fact]
    public void TheCommonFactorOfAWarmerNightMakesNoPixelBrighter()
    {
        HotPixelDrift drift = Compare(Sensor.Measure(1), Sensor.Measure(2, probeCelsius: 0.5));
        Assert.InRange(drift.CommonFactor!.Value, 1.04, 1.07); // 2^(0.5/6.6) = 1.054
        Assert.InRange(drift.Brighter + drift.Fainter, 0, 2);
    }

    [Fact]
    public void FlickeringPixelsAreLeftOut()
    {
        MapRates plain = Sensor.Measure(1);
        int[] hot = [.. plain.Above(0.3)];
        bool[] flickers = new bool[Sensor.Width * Sensor.Height];
        foreach (int i in hot)
            flickers[i] = true;
        float[] rates = [.. Enumerable.Range(0, flickers.Length).Select(i => (float)plain.At(i).Rate)],
            errors = [.. Enumerable.Range(0, flickers.Length).Select(i => (float)plain.At(i).Uncertainty)];
        HotPixelDrift drift = Compare(
            MapRates.Of(Sensor.Width, Sensor.Height, -10, rates, errors, null, flickers),
            Sensor.Measure(2, healed: 100)
        );
        Assert.Equal(hot.Length, drift.Flickering);
    }

    /// <summary>The list that an archive keeps instead of maps finds the same new pixels, and never more.</summary>
    [Fact]
    public void TheListOfHotPixelsServesLikeTheMaps()
    {
        string folder = Directory.CreateTempSubdirectory("drift-").FullName;
        try
        {
            Dictionary<int, double> born = Enumerable.Range(0, 40).ToDictionary(k => 1000 + 1871 * k, _ => 1.0);
            HotPixelListFile.Write(folder, Sensor.Measure(1), Threshold);
            HotPixelDrift drift = Compare(HotPixelListFile.Read(folder)!, Sensor.Measure(2, born: born, healed: 15));
            Assert.Equal(40, drift.New);
            Assert.InRange(drift.Healed, 12, 15);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static HotPixelDrift Compare(PixelRates first, PixelRates last) =>
        HotPixelComparison.Compare(
            "gain 100",
            HotPixelMatch.Match(first, last, Threshold),
            last,
            Threshold,
            1,
            new DriftOptions { Layouts = 199 }
        );
}
