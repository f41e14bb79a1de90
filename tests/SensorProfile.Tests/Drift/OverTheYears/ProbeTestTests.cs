using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.OverTheYears;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.OverTheYears;

public sealed class ProbeTestTests(ITestOutputHelper output)
{
    private static readonly SyntheticMaps Sensor = new();

    /// <summary>A probe that drifted by 1 °C makes every pixel 1 °C warmer: never called ageing.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void AProbeThatDriftedIsNeverCalledAgeing(double celsius)
    {
        ProbeOrAgeing[] verdicts = [.. Enumerable.Range(0, 30).Select(night => Judge(night, 1, celsius))];
        Report(verdicts);
        Assert.All(verdicts, v => Assert.NotEqual(ProbeVerdict.Ageing, v.Verdict));
        // 99 % tests: 0.3 of 30 expected to say "both"
        Assert.InRange(verdicts.Count(v => v.Verdict == ProbeVerdict.Probe), 27, 30);
        Assert.InRange(verdicts.Average(v => v.StepOfHotPixels!.Value), celsius - 0.05, celsius + 0.05);
    }

    [Fact]
    public void DarkCurrentThatRoseIsCalledAgeing()
    {
        ProbeOrAgeing[] verdicts = [.. Enumerable.Range(0, 30).Select(night => Judge(night, 1.15, 0))];
        Report(verdicts);
        Assert.InRange(verdicts.Count(v => v.Verdict == ProbeVerdict.Ageing), 27, 30);
        Assert.DoesNotContain(verdicts, v => v.Verdict == ProbeVerdict.Probe);
    }

    [Fact]
    public void BothAtOnceAreToldApart()
    {
        ProbeOrAgeing[] verdicts = [.. Enumerable.Range(0, 10).Select(night => Judge(night, 1.3, 1))];
        Report(verdicts);
        Assert.All(verdicts, v => Assert.Equal(ProbeVerdict.Both, v.Verdict));
    }

    [Fact]
    public void WithoutMapsItCannotTell()
    {
        var random = new Random(1);
        DriftAnswer answer = DriftComparison.Run([
            new TarnYears().Measure(2031, random),
            new TarnYears { DarkRate = 0.015 }.Measure(2032, random),
        ]);
        ProbeOrAgeing probe = Assert.Single(answer.Probes);
        Assert.Equal(ProbeVerdict.CannotTell, probe.Verdict);
        Assert.Equal(ProbeGap.NoMaps, probe.Gap);
    }

    private void Report(ProbeOrAgeing[] verdicts) =>
        output.WriteLine(string.Join(", ", verdicts.GroupBy(v => v.Verdict).Select(g => $"{g.Key} {g.Count()}")));

    private static ProbeOrAgeing Judge(int night, double growth, double celsius)
    {
        var random = new Random(500 + night);
        ProfileOnDisk before = new TarnYears().Measure(2031, random),
            now = new TarnYears { DarkRate = 0.012 * growth * Math.Pow(2, celsius / 6.1) }.Measure(2032, random);
        MapRates first = Sensor.Measure(1000 + night),
            last = Sensor.Measure(2000 + night, growth, celsius);
        DriftChange dark = DriftComparison.Run([before, now]).Changes.Single(c => c.Quantity == "darkRate");
        return ProbeTest.Judge(
            new MatchedMode("gain 100", [(before, 0), (now, 0)]),
            dark,
            HotPixelMatch.Match(first, last, 0.05),
            -10,
            first.Doubling,
            new DriftOptions()
        );
    }
}
