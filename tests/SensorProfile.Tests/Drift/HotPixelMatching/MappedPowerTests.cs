using SensorProfile.Drift.OverTheYears;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.HotPixelMatching;

/// <summary>
/// The whole family of tests, matched pixels among them: how often it cries wolf, and how small a change it finds. Each
/// line is printed.
/// </summary>
public sealed class MappedPowerTests(ITestOutputHelper output)
{
    /// <summary>
    /// Pairs of years in which nothing changed (200 in the long suite): at most 5 % may say "changed"; of n pairs n/20 +
    /// 3·√(n·0.05·0.95) at most, 19 of 200.
    /// </summary>
    [Fact]
    public void AnUnchangedCameraWithMapsIsSeldomCalledChanged()
    {
        int pairs = LongRuns.Of(50, 200);
        DriftAnswer[] answers =
        [
            .. Enumerable.Range(0, pairs).Select(i => new MappedYears(i).Add(2031).Add(2032).Compare()),
        ];
        int alarms = answers.Count(a => a.Outcome == DriftVerdict.Changed);
        double[] z = [.. answers.Select(a => Pixelwise(a).Z)];
        output.WriteLine(
            $"false 'has changed': {alarms} of {pairs} pairs with maps; z of the dark current pixel by pixel: mean "
                + $"{z.Average():F2}, rms {Math.Sqrt(z.Average(v => v * v)):F2}"
        );
        Assert.InRange(alarms, 0, (int)(0.05 * pairs + 3 * Math.Sqrt(0.0475 * pairs)));
        double mean = 3.5 / Math.Sqrt(pairs),
            rms = 3.5 / Math.Sqrt(2 * pairs);
        Assert.InRange(z.Average(), -mean, mean);
        Assert.InRange(Math.Sqrt(z.Average(v => v * v)), 1 - rms, 1 + rms);
        // a 99 % test: 2 of 200 expected, 2 + 5·√2
        double wrong = 0.01 * pairs;
        Assert.InRange(
            answers.Count(a => a.Probes.Single().Verdict != ProbeVerdict.None),
            0,
            (int)(wrong + 5 * Math.Sqrt(wrong))
        );
    }

    /// <summary>
    /// Growth of the ordinary pixels: the power rises with it, and the pixel-by-pixel comparison finds what the level
    /// alone does not.
    /// </summary>
    [Fact]
    public void PowerAgainstTheGrowthOfDarkCurrent()
    {
        double[] found = Curve(
            "dark current",
            [0.01, 0.02, 0.03, 0.05, 0.08],
            (years, growth) => years.Add(2034, 1 + growth),
            IsDarkUp
        );
        // 5 % is 5.1 standard uncertainties of √2·√(0.57² + 0.4²) %, and 3 are needed: 98 %
        Assert.InRange(found[3], 0.9, 1);
        Assert.Equal(found.Order(), found);
    }

    /// <summary>
    /// New hot pixels: five suffice to be seen as pixels; the count of new less healed is significant from about a
    /// dozen on (2·0.5¹² is 0.0005, times 20 tests 0.01).
    /// </summary>
    [Fact]
    public void PowerAgainstNewHotPixels()
    {
        double[] found = Curve(
            "new hot pixels",
            [5, 8, 12, 20, 40],
            (years, born) => years.Add(2034, born: (int)born),
            a => a.Changes.Any(c => c.Quantity == "newLessHealed" && c.Changed),
            share: false
        );
        Assert.InRange(found[^2], 0.95, 1);
        Assert.Equal(found.Order(), found);
    }

    [Fact]
    public void PowerAgainstTheGrowthOfGlow()
    {
        double[] found = Curve(
            "glow",
            [0.05, 0.1, 0.15, 0.2, 0.3],
            (years, g) => years.Add(2034, tarn: new TarnYears { Glow = 900 * (1 + g) }),
            a => a.Changes.Any(c => c.Quantity == "glowTotal" && c.Changed)
        );
        Assert.InRange(found[^1], 0.9, 1); // 30 % is 6.3 standard uncertainties of 3 % each
        Assert.True(found[0] < found[^1]);
    }

    [Fact]
    public void PowerAgainstTheDriftOfTheGain()
    {
        double[] found = Curve(
            "gain",
            [0.005, 0.01, 0.02, 0.03, 0.04],
            (years, g) => years.Add(2034, tarn: new TarnYears { Gain = 0.8 * (1 + g) }),
            a => a.Changes.Any(c => c.Quantity == "gain" && c.Changed)
        );
        Assert.InRange(found[^1], 0.95, 1); // 4 % is 7 standard uncertainties of 0.4 % each
        Assert.True(found[0] < found[^1]);
    }

    /// <summary>Drift of the probe alone: found as such with growing power, and never called ageing.</summary>
    [Fact]
    public void PowerAgainstTheDriftOfTheProbe()
    {
        ProbeVerdict[] Verdicts(double celsius) =>
            [
                .. Enumerable
                    .Range(0, 20)
                    .Select(i =>
                        new MappedYears(i + (int)(1e3 * celsius))
                            .Add(2031)
                            .Add(2034, probe: celsius)
                            .Compare()
                            .Probes.Single()
                            .Verdict
                    ),
            ];
        foreach (double celsius in (double[])[0.1, 0.2, 0.3, 0.5, 1, -1])
        {
            ProbeVerdict[] verdicts = Verdicts(celsius);
            output.WriteLine(
                $"probe {celsius:F1} °C: "
                    + $"{string.Join(", ", verdicts.GroupBy(v => v).OrderBy(g => g.Key).Select(g => $"{g.Key} {g.Count()}"))} "
                    + ""
                    + ""
                    + ""
                    + ""
                    + "of 20"
            );
            Assert.True(
                Math.Abs(celsius) < 1 || verdicts.All(v => v == ProbeVerdict.Probe),
                celsius.ToString(System.Globalization.CultureInfo.InvariantCulture)
            );
            Assert.DoesNotContain(ProbeVerdict.Ageing, verdicts);
        }
    }

    /// <summary>Four Octobers at 2 % a year: the trend finds what a pair of neighbouring years cannot.</summary>
    [Fact]
    public void TheTrendOfFourYearsFindsASlowRise()
    {
        const int series = 20;
        int byTrend = 0,
            held = 0;
        for (int i = 0; i < series; i++)
        {
            MappedYears years = new(300 + i);
            for (int y = 0; y < 4; y++)
                years.Add(2031 + y, Math.Pow(1.02, y));
            DriftTrend trend = years.Compare().Trends.Single(t => t.Quantity == "darkRateByPixel");
            if (trend.Changed)
                byTrend++;
            double truth = 0.012 * (Math.Pow(1.02, 3) - 1) / 3;
            if (Math.Abs(trend.PerYear.Value - truth) < 1.96 * trend.PerYear.StandardUncertainty)
                held++;
        }
        output.WriteLine($"2 % a year over four Octobers: {byTrend} of {series} found, slope within 95 % in {held}");
        Assert.InRange(byTrend, series * 3 / 4, series);
        Assert.InRange(held, 16, series); // 19 expected; fewer than 16 has a chance of 0.3 %
    }

    private static DriftChange Pixelwise(DriftAnswer answer) =>
        answer.Changes.Single(c => c.Quantity == "darkRateByPixel");

    private static bool IsDarkUp(DriftAnswer answer) =>
        answer.Changes.Any(c => c.Quantity is "darkRate" or "darkRateByPixel" && c.Changed && c.Z > 0);

    private double[] Curve(
        string what,
        double[] sizes,
        Func<MappedYears, double, MappedYears> end,
        Func<DriftAnswer, bool> found,
        bool share = true
    )
    {
        const int pairs = 20;
        List<double> power = [];
        foreach (double size in sizes)
        {
            power.Add(
                Enumerable.Range(0, pairs).Count(i => found(end(new MappedYears(1000 + i).Add(2031), size).Compare()))
                    / (double)pairs
            );
            output.WriteLine(
                share
                    ? $"{what} +{100 * size:0.#} %: found in {100 * power[^1]:F0} % of pairs"
                    : $"{size} {what}: found in {100 * power[^1]:F0} % of pairs"
            );
        }
        return [.. power];
    }
}
