using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.Decisions.Setpoint;

public class NightsSummaryTests
{
    // −8 … 22 °C, one night each
    private static readonly AmbientTemperature[] year =
    [
        .. Enumerable.Range(-8, 31).Select(t => new AmbientTemperature($"night {t}", t)),
    ];

    // 23 nights within 10 °C of the darks, which end at 5 °C
    private static readonly AmbientTemperature[] mild = [.. year.Where(night => night.Celsius <= 14)];

    private static SetpointAnswer Ask(bool cooled) =>
        SetpointAdvice.Find(
            new Tarn().Profile(),
            new Tarn().Mode(),
            new SetpointQuestion
            {
                ExposureSeconds = 300,
                Sky = SkyRate.Given(0.5),
                Ambient = cooled ? year : mild,
                MaximumDifference = cooled ? 20 : null,
                Margin = 3,
                Cooled = cooled,
            }
        );

    [Fact] // the cooler holds T on a night of at most T + 17 °C: T + 26 of the 31 nights
    public void TheShareOfNightsIsCounted()
    {
        SetpointAnswer answer = Ask(cooled: true);
        Assert.True(answer.Nights.Count > 1);
        Assert.All(answer.Nights, row => Assert.Equal(Math.Clamp((int)row.Sensor + 26, 0, 31), row.Nights));
        Assert.Equal(1, answer.Nights[^1].Share);
        Assert.Equal(5, answer.ColdestHeld);
        Assert.Equal(answer.Quantities["setpoint"]!.Value, answer.Nights[^1].Sensor);
    }

    [Fact]
    public void WithoutACoolerTheNightsThatAreColdEnoughAreCounted()
    {
        SetpointAnswer answer = Ask(cooled: false);
        int within = mild.Count(night => night.Celsius <= answer.Quantities["setpoint"]!.Value);
        Assert.Equal(within, answer.Ambient.Count(night => night.WithinLoss));
        Assert.Equal(14, answer.Nights[^1].Sensor);
        Assert.Single(answer.Findings, f => f.Code == "extrapolated"); // one sentence for all warm nights
    }
}
