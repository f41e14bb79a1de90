using OxyPlot.Series;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Years;

namespace SensorProfile.Reporting.Tests.Plots.Years;

/// <summary>One quantity over the years.</summary>
public sealed class DriftTrendPlotTests
{
    /// <summary>2000 is a leap year of 366 days: 1 July 2000 is day 182, 182/365.25 of a year.</summary>
    [Fact]
    public void ADateIsAYearWithItsFraction()
    {
        Assert.Equal(2000, DriftTrendPlot.Year(new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero)));
        Assert.Equal(
            2000 + 182 / 365.25,
            DriftTrendPlot.Year(new DateTimeOffset(2000, 7, 1, 0, 0, 0, TimeSpan.Zero)),
            1e-9
        );
        // twelve hours east of the meridian the same day begins half a day earlier
        Assert.Equal(
            2000 + 181.5 / 365.25,
            DriftTrendPlot.Year(new DateTimeOffset(2000, 7, 1, 0, 0, 0, TimeSpan.FromHours(12))),
            1e-9
        );
    }

    /// <summary>Bars of 95 %: 1.96 standard uncertainties to each side.</summary>
    [Fact]
    public void TwoDatesAreTwoPointsWithTheirBars()
    {
        DateTimeOffset first = new(2030, 10, 1, 0, 0, 0, TimeSpan.Zero),
            last = new(2031, 10, 1, 0, 0, 0, TimeSpan.Zero);
        Measurement from = new(1.5, 0.1, "e-", 1, "test"),
            to = new(1.7, 0.2, "e-", 1, "test");
        var change = new DriftChange(
            "readNoise",
            "gain 100",
            from,
            to,
            new Measurement(0.2, 0.22, "e-", 1, "test"),
            0.9,
            0.37,
            0.37,
            Changed: false,
            Detectable: 0.6
        );
        Panel panel = DriftTrendPlot.Draw("Read noise", change, first, last);
        ScatterSeries marks = Assert.Single(panel.Model.Series.OfType<ScatterSeries>());
        Assert.Equal([1.5, 1.7], marks.Points.Select(p => p.Y));
        Assert.Equal(365 / 365.25, marks.Points[1].X - marks.Points[0].X, 1e-9);
        LineSeries bars = panel.Model.Series.OfType<LineSeries>().First();
        Assert.Equal([1.5 - 0.196, 1.5 + 0.196], bars.Points.Take(2).Select(p => p.Y), (a, b) =>
            Math.Abs(a - b) < 1e-9
        );
    }
}
