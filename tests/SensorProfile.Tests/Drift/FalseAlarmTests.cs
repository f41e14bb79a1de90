using SensorProfile.Drift;
using SensorProfile.Drift.OverTheYears;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift;

public sealed class FalseAlarmTests(ITestOutputHelper output)
{
    private const int Pairs = 600;

    /// <summary>
    /// 600 pairs of years in which nothing changed: at most 5 % may say "changed", 30 expected at most; 30 +
    /// 3·√(600·0.05·0.95) = 46.
    /// </summary>
    [Fact]
    public void AnUnchangedCameraIsSeldomCalledChanged()
    {
        var tarn = new TarnYears();
        int alarms = Enumerable.Range(0, Pairs).Count(i => Compare(tarn, tarn, i, 1).Outcome == DriftVerdict.Changed);
        output.WriteLine($"false 'has changed': {alarms} of {Pairs} pairs");
        Assert.InRange(alarms, 0, 46);
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
    /// z-scores of single quantities are standard normal: mean within 3.5/√600, spread within 3.5/√1200 of 1, both for
    /// the dark rate, whose uncertainty joins three sources.
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
        Assert.InRange(z.Average(), -0.143, 0.143);
        Assert.InRange(Math.Sqrt(z.Sum(v => v * v) / z.Length), 0.90, 1.10);
    }

    /// <summary>
    /// Power: the share of pairs in which a rise of the dark current is found grows with its size, and is 80 % at the
    /// stated detectable change (±3·√(0.8·0.2/200) = 0.085).
    /// </summary>
    [Fact]
    public void PowerGrowsWithTheChange()
    {
        double detectable =
            Compare(new TarnYears(), new TarnYears(), 1, 1).Changes.Single(c => c.Quantity == "darkRate").Detectable
            / 0.012;
        List<double> power = [];
        foreach (double share in (double[])[0, 0.25, 0.5, 0.75, 1, 1.25, 1.5])
        {
            var aged = new TarnYears { DarkRate = 0.012 * (1 + share * detectable) };
            power.Add(Enumerable.Range(0, 200).Count(i => Found(Compare(new TarnYears(), aged, i, 1))) / 200.0);
            output.WriteLine(
                $"dark current +{100 * share * detectable:F1} %: found in {100 * power[^1]:F0} % of pairs"
            );
        }
        Assert.InRange(power[0], 0, 0.03);
        Assert.InRange(power[4], 0.70, 0.90);
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
