using OxyPlot.Annotations;
using OxyPlot.Series;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Nights;

namespace SensorProfile.Reporting.Tests.Plots.Nights;

/// <summary>The curves of a decision lead to its numbers.</summary>
public sealed class NightPlotsTests
{
    private static readonly CameraProfile profile = TarnProfile.Build();

    /// <summary>
    /// A tolerance is where the load of its cause reaches the limit: read off the plot, between two points of a curve
    /// that is drawn in logarithms, it is the number of the answer to the width of a step.
    /// </summary>
    [Fact]
    public void TheBindingLineCrossesTheLimitAtTheTolerance()
    {
        ToleranceAnswer answer = DarkTolerance.Find(
            profile,
            profile.Modes[0],
            new ToleranceQuestion
            {
                Sky = NamedSkies.OrDefault(null),
                ExposureSeconds = 300,
                TemperatureCelsius = -5,
                Lights = 40,
            }
        );
        Panel warmer = TolerancePlot.Draw(answer)[0];
        LineSeries[] thick = [.. warmer.Model.Series.OfType<LineSeries>().Where(l => l.StrokeThickness > 2)];
        LineSeries binding = Assert.Single(thick);
        double tolerance = answer.Quantities["toleranceWarmer"]!.Value;
        int above = binding.Points.FindIndex(p => p.Y >= 1);
        Assert.True(above > 0, "the curve reaches the limit");
        Assert.InRange(tolerance, binding.Points[above - 1].X, binding.Points[above].X);
    }

    [Fact]
    public void TheSetPointIsMarkedAndTheAcceptedLossIsALevel()
    {
        SetpointAnswer answer = SetpointAdvice.Find(
            profile,
            profile.Modes[0],
            new SetpointQuestion { Sky = NamedSkies.OrDefault(null), ExposureSeconds = 300 }
        );
        Panel panel = SetpointPlot.Draw([answer])!;
        LineAnnotation[] lines = [.. panel.Model.Annotations.OfType<LineAnnotation>()];
        Assert.Contains(lines, l => l.Type == LineAnnotationType.Horizontal && l.Y == 100 * answer.Loss);
        Assert.Contains(lines, l => l.Type == LineAnnotationType.Vertical && l.X == answer.At.Temperature);
        LineSeries typical = panel.Model.Series.OfType<LineSeries>().Single(l => l.Title == "typical pixel");
        Assert.All(typical.Points, p =>
        {
            SetpointPoint given = answer.Curve.Single(c => c.Temperature == p.X);
            Assert.Equal(given.ExtraTypical, p.Y, 1e-9);
        });
        // a warmer sensor never adds less
        Assert.Equal(typical.Points.Select(p => p.Y).Order(), typical.Points.OrderBy(p => p.X).Select(p => p.Y));
    }
}
