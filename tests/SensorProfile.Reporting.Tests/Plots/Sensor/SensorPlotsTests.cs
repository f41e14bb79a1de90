using OxyPlot;
using OxyPlot.Series;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Tests.Plots.Sensor;

/// <summary>What the plots of a profile show is what the profile holds.</summary>
public sealed class SensorPlotsTests
{
    private static readonly ModeProfile mode = TarnProfile.Mode();

    [Fact]
    public void EveryPointOfThePhotonTransferCurveIsDrawnWhereItWasMeasured()
    {
        PhotonTransferCurve curve = mode.PhotonTransfer!.Curves[0];
        (double, double)[] drawn = Points(PhotonTransferPlot.Draw(mode.PhotonTransfer)!, lower: false);
        Assert.Equal(
            curve.Points.Where(p => p is { Signal: > 0, Variance: > 0 }).Select(p => (p.Signal, p.Variance)).Order(),
            drawn.Order()
        );
    }

    /// <summary>Residual = 100 (V/V̂ − 1) with V̂ = slope·S + intercept, u = 100 u(V)/V̂.</summary>
    [Fact]
    public void ResidualsOfAStraightFitAreTheDeviationsInPercent()
    {
        PhotonTransferCurve curve = mode.PhotonTransfer!.Curves[0] with { Selected = GainForm.Straight };
        (BarPoint Point, bool InFit)[] residuals = [.. PhotonTransferPlot.Residuals(curve)];
        Assert.NotEmpty(residuals);
        Assert.All(residuals, r =>
        {
            PhotonTransferPoint point = curve.Points.Single(p => p.Signal == r.Point.X);
            double expected = curve.Slope!.Value * point.Signal + curve.Intercept!.Value;
            Assert.Equal(100 * (point.Variance - expected) / expected, r.Point.Y, 1e-9);
            Assert.Equal(100 * point.VarianceUncertainty / expected, r.Point.Uncertainty, 1e-9);
            Assert.Equal(point.InGainFit, r.InFit);
        });
    }

    [Fact]
    public void HotPixelsAreCountedAtTheirThresholds()
    {
        HotPixelCount[] counts = [.. mode.FixedPattern!.HotPixelCurve.Where(c => c is { Count: > 0, Threshold: > 0 })];
        Assert.Equal(
            counts.Select(c => (c.Threshold, (double)c.Count)),
            Points(HotPixelPlot.Counts(mode.FixedPattern)!, lower: false)
        );
        Assert.Null(HotPixelPlot.Counts(mode.FixedPattern with { HotPixelCurve = [] }));
    }

    /// <summary>The dotted lines say what a glow would be that grows in proportion to exposure.</summary>
    [Fact]
    public void TheDottedLineOfTheGlowIsInProportionToExposure()
    {
        GlowSignal[] signals =
        [
            .. new[] { -10.0, 0 }.SelectMany(t =>
                new[] { 10.0, 60, 300 }.Select(s => new GlowSignal(
                    t,
                    s,
                    new Measurement(0.4 * Math.Pow(s, 0.9), 0.1, "e-", 1, "test")
                ))
            ),
        ];
        FixedPatternProfile pattern = mode.FixedPattern! with
        {
            Glow = [mode.FixedPattern.Glow[0] with { Signals = signals }],
        };
        Panel panel = GlowPlot.AgainstExposure(pattern)!;
        LineSeries[] dotted = [.. panel.Model.Series.OfType<LineSeries>().Where(l => l.LineStyle == LineStyle.Dot)];
        Assert.NotEmpty(dotted);
        Assert.All(dotted, line =>
            Assert.All(line.Points, p => Assert.Equal(line.Points[0].Y / line.Points[0].X, p.Y / p.X, 1e-9))
        );
        // one series of points for each temperature, and each line meets the longest of its exposures
        ScatterSeries[] marks = [.. panel.Model.Series.OfType<ScatterSeries>()];
        Assert.Equal(dotted.Length, marks.Length);
        Assert.All(marks.Zip(dotted), pair =>
        {
            ScatterPoint longest = pair.First.Points.MaxBy(p => p.X)!;
            Assert.Contains(pair.Second.Points, p => p.X == longest.X && Math.Abs(p.Y - longest.Y) < 1e-9 * p.Y);
        });
    }

    [Fact]
    public void TheSessionShowsEveryFrameThatHasATemperature()
    {
        CameraProfile profile = TarnProfile.Build();
        int withTemperature = profile.Frames.Session.Count(f => f is { Temperature: not null, StartUtc: not null });
        Assert.True(withTemperature > 10);
        Panel panel = SessionPlot.Draw(profile.Frames)!;
        Assert.Equal(
            withTemperature,
            panel.Model.Series.OfType<ScatterSeries>().Where(s => s.YAxisKey == "temperature").Sum(s => s.Points.Count)
        );
        Assert.Null(SessionPlot.Draw(profile.Frames with { Session = [] }));
    }

    private static (double, double)[] Points(Panel panel, bool lower) =>
        [
            .. panel
                .Model.Series.OfType<ScatterSeries>()
                .Where(s => (s.YAxisKey == StackedAxes.Lower) == lower)
                .SelectMany(s => s.Points)
                .Select(p => (p.X, p.Y)),
        ];
}
