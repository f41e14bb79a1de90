using SensorProfile.Drift;
using SensorProfile.Drift.OverTheYears;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift;

public sealed class FalseAlarmTests(ITestOutputHelper output)
{
    private static readonly int Pairs = LongRuns.Of(200, 600);

    /// <summary>
    /// Pairs of years in which nothing changed (600 in the long suite): at most 5 % may say "changed"; of n pairs
    /// n/20 + 3·√(n·0.05·0.95), 46 of 600.
    /// </summary>
    [Fact]
    public void AnUnchangedCameraIsSeldomCalledChanged()
    {
        var tarn = new TarnYears();
        int alarms = Enumerable.Range(0, Pairs).Count(i => Compare(tarn, tarn, i, 1).Outcome == DriftVerdict.Changed);
        output.WriteLine($"false 'has changed': {alarms} of {Pairs} pairs");
        Assert.InRange(alarms, 0, (int)(0.05 * Pairs + 3 * Math.Sqrt(0.0475 * Pairs)));
    }

    /// <summary>The same over four dates, trends included.</summary>
    [Fact]
    public void FourUnchangedYearsAreSeldomCalledChanged()
    {
        var tarn = new TarnYears();
        int alarms = Enumerable.Range(0, 300).Count(i => Years(i, _ => tarn).Outcome == DriftVerdict.Changed);
        output.WriteLine($"false 'has changed': {alarms} of 300 series of four years");
        Assert.InRange(alarms, 0, 26); // 15 + 3·√14.25
    }

    /// <summary>
    /// z-scores of single quantities are standard normal: of n pairs mean within 3.5/√n, spread within 3.5/√(2n) of 1,
    /// both for the dark rate, whose uncertainty joins three sources.
    /// </summary>
    [Fact]
    public void TheZScoresAreHonest()
    {
        double[] z =
        [
            .. Enumerable
                .Range(0, Pairs)
                .Select(i =>
                    Compare(new TarnYears(), new TarnYears(), i, 1).Changes.Single(c => c.Quantity == "darkRate").Z
                ),
        ];
        double mean = 3.5 / Math.Sqrt(Pairs),
            rms = 3.5 / Math.Sqrt(2 * Pairs);
        Assert.InRange(z.Average(), -mean, mean);
        Assert.InRange(Math.Sqrt(z.Sum(v => v * v) / z.Length), 1 - rms, 1 + rms);
    }

    /// <summary>
    /// Power: the share of pairs in which a rise of the dark current is found grows with its size, and is 80 % at the
    /// stated detectable change (of n pairs ±3.5·√(0.8·0.2/n): 0.1 of the 200 in the long suite).
    /// </summary>
    [Fact]
    public void PowerGrowsWithTheChange()
    {
        double detectable =
            Compare(new TarnYears(), new TarnYears(), 1, 1).Changes.Single(c => c.Quantity == "darkRate").Detectable
            / 0.012;
        int pairs = LongRuns.Of(80, 200);
        List<double> power = [];
        foreach (double share in (double[])[0, 0.25, 0.5, 0.75, 1, 1.25, 1.5])
        {
            var aged = new TarnYears { DarkRate = 0.012 * (1 + share * detectable) };
            power.Add(
                Enumerable.Range(0, pairs).Count(i => Found(Compare(new TarnYears(), aged, i, 1))) / (double)pairs
            );
            output.WriteLine(
                $"dark current +{100 * share * detectable:F1} %: found in {100 * power[^1]:F0} % of pairs"
            );
        }
        Assert.InRange(power[0], 0, 0.03);
        double open = 3.5 * Math.Sqrt(0.16 / pairs);
        Assert.InRange(power[4], 0.8 - open, 0.8 + open);
        Assert.True(power[^1] > 0.97);
        Assert.Equal(power.Order(), power);
    }

    /// <summary>
    /// Slope of four Octobers with 6 % growth a year: 95 % of the intervals hold the truth, and most series are called
    /// changed.
    /// </summary>
    [Fact]
    public void TheTrendHoldsTheTruth()
    {
        const double perYear = 0.06 * 0.012;
        int held = 0,
            changed = 0;
        for (int i = 0; i < 200; i++)
        {
            DriftAnswer answer = Years(i, year => new TarnYears { DarkRate = 0.012 + perYear * year });
            DriftTrend trend = answer.Trends.Single(t => t.Quantity == "darkRate");
            if (Math.Abs(trend.PerYear.Value - perYear) < 1.96 * trend.PerYear.StandardUncertainty)
                held++;
            if (answer.Outcome == DriftVerdict.Changed)
                changed++;
        }
        output.WriteLine($"slope within 95 %: {held} of 200; changed: {changed} of 200");
        Assert.InRange(held, 181, 199);
        Assert.True(changed > 190);
    }

    private static bool Found(DriftAnswer answer) => answer.Changes.Single(c => c.Quantity == "darkRate").Changed;

    private static DriftAnswer Compare(TarnYears before, TarnYears now, int seed, int years)
    {
        var random = new Random(7000 + seed);
        return DriftComparison.Run([before.Measure(2031, random), now.Measure(2031 + years, random)]);
    }

    private static DriftAnswer Years(int seed, Func<int, TarnYears> tarn)
    {
        var random = new Random(9000 + seed);
        return DriftComparison.Run(
            [.. Enumerable.Range(0, 4).Select(y => tarn(y).Measure(2031 + y, random))],
            new DriftOptions { Stack = null }
        );
    }
}
