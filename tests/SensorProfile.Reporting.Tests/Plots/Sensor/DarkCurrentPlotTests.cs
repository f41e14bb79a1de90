using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Tests.Plots.Sensor;

public class DarkCurrentPlotTests
{
    [Fact]
    public void TheChosenLawIsSolidWhereMeasuredAndDashedBeyond()
    {
        DarkCurrentProfile dark = TarnProfile.Mode().DarkCurrent!;
        OxyPlot.Series.LineSeries[] chosen =
        [
            .. DarkCurrentPlot
                .Draw(dark)!
                .Model.Series.OfType<OxyPlot.Series.LineSeries>()
                .Where(line => line.Color == Palette.Ink && line.Points.Count > 1),
        ];
        double low = dark.MeasuredRange![0],
            high = dark.MeasuredRange[1];

        OxyPlot.Series.LineSeries solid = Assert.Single(chosen, line => line.LineStyle == OxyPlot.LineStyle.Solid);
        Assert.InRange(solid.Points[0].X, low - 0.5, low);
        Assert.InRange(solid.Points[^1].X, high, high + 0.5);
        Assert.All(chosen.Where(line => line != solid), line =>
        {
            Assert.Equal(OxyPlot.LineStyle.Dash, line.LineStyle);
            Assert.True(line.Points[^1].X <= low || line.Points[0].X >= high);
        });
    }

    [Fact]
    public void ResidualsAreOfThePointsThatTheLawsDescribe()
    {
        DarkCurrentProfile dark = TarnProfile.Mode().DarkCurrent!;
        BarPoint[] residuals = [.. DarkCurrentPlot.Residuals(dark, new RateLaws(dark))];
        Assert.Equal(dark.Points.Count, residuals.Length);
        Assert.All(residuals.Zip(dark.Points), pair =>
            Assert.Equal(
                100 * pair.Second.TypicalRate!.StandardUncertainty / pair.Second.TypicalRate.Value,
                pair.First.Uncertainty / (1 + pair.First.Y / 100),
                1e-9
            )
        );
    }

    [Fact]
    public void ALawOfALaterVersionIsLeftOut()
    {
        DarkCurrentProfile dark = TarnProfile.Mode().DarkCurrent!;
        var laws = new RateLaws(
            dark with
            {
                Models = [.. dark.Models, new DarkCurrentModel { Name = "surface-state" }],
            }
        );
        Assert.Equal(dark.Models.Select(model => model.Name), laws.Models.Select(model => model.Name));
    }
}
