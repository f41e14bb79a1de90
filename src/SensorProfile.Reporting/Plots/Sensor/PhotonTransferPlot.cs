using OxyPlot;
using OxyPlot.Axes;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>The photon-transfer curve: temporal variance against signal, with the fits and their residuals.</summary>
/// <remarks>
/// Straight: σ² = σ₀² + K·μ. Curved: σ² = K·μ·(1 + a·μ). Both of the signal above dark (EMVA 1288 Release 4.0 Linear).
/// </remarks>
internal static class PhotonTransferPlot
{
    private const int LinePoints = 120;

    /// <summary>The plot, or null without points.</summary>
    public static Panel? Draw(PhotonTransferProfile? profile)
    {
        PhotonTransferCurve[] curves = [.. (profile?.Curves ?? []).Where(curve => curve.Points.Any(IsDrawable))];
        if (curves.Length == 0)
            return null;
        PlotModel model = PlotBase.New();
        PlotBase.AddLegend(model);
        PhotonTransferPoint[] all = [.. curves.SelectMany(curve => curve.Points).Where(IsDrawable)];
        Span signals = Span.OfPositive(all.Select(point => point.Signal));
        PlotBase.AddLogarithmic(model, AxisPosition.Bottom, "Signal above dark, ADU", signals);
        LogarithmicAxis upper = PlotBase.AddLogarithmic(
            model,
            AxisPosition.Left,
            "Temporal variance above dark, ADU²",
            Span.OfPositive(all.Select(point => point.Variance))
        );
        Span residuals = Span.Of(
                curves
                    .SelectMany(curve =>
                        Residuals(curve)
                            .Where(p => p.InFit)
                            .SelectMany(p =>
                                new[] { p.Point.Y - 2 * p.Point.Uncertainty, p.Point.Y + 2 * p.Point.Uncertainty }
                            )
                    )
                    .Concat(curves.Length == 1 ? OtherFit(curves[0]).Select(point => point.Y) : [])
            )
            .Including(0);
        StackedAxes.AddLower(model, upper, "Residual, %", residuals);
        for (int i = 0; i < curves.Length; i++)
            Draw(model, curves[i], i, curves.Length == 1);
        return new Panel(model, 0.7);
    }

    private static void Draw(PlotModel model, PhotonTransferCurve curve, int index, bool alone)
    {
        OxyColor colour = Palette.Series(index);
        BarPoint Point(PhotonTransferPoint p) => new(p.Signal, p.Variance, p.VarianceUncertainty);
        PlotBase.AddPoints(
            model,
            PointStyle.Of(index, alone ? "in the fit" : curve.Channel),
            [.. curve.Points.Where(p => p.InGainFit && IsDrawable(p)).Select(Point)]
        );
        PlotBase.AddPoints(
            model,
            PointStyle.Of(index, alone ? "outside the fit" : null, filled: false),
            [.. curve.Points.Where(p => !p.InGainFit && IsDrawable(p)).Select(Point)]
        );
        PlotBase.AddLine(
            model,
            alone ? "straight fit" : null,
            alone ? Palette.Vermillion : colour,
            LineStyle.Solid,
            Curve(curve, Straight(curve)),
            curve.Selected == GainForm.Straight ? 1.5 : 0.9
        );
        PlotBase.AddLine(
            model,
            alone && curve.GainCurved is not null ? "curved fit" : null,
            alone ? Palette.Green : colour,
            LineStyle.Dash,
            Curve(curve, Curved(curve)),
            curve.Selected == GainForm.Curved ? 1.5 : 0.9
        );
        if (alone)
            PlotBase.AddLine(
                model,
                null,
                curve.Selected == GainForm.Curved ? Palette.Vermillion : Palette.Green,
                curve.Selected == GainForm.Curved ? LineStyle.Solid : LineStyle.Dash,
                OtherFit(curve),
                0.9,
                StackedAxes.Lower
            );
        (BarPoint Point, bool InFit)[] residuals = [.. Residuals(curve)];
        PlotBase.AddPoints(
            model,
            PointStyle.Of(index, null),
            [.. residuals.Where(r => r.InFit).Select(r => r.Point)],
            StackedAxes.Lower
        );
    }

    /// <summary>Deviation of each point from the chosen fit, % of the fit.</summary>
    internal static IEnumerable<(BarPoint Point, bool InFit)> Residuals(PhotonTransferCurve curve)
    {
        if ((curve.Selected == GainForm.Curved ? Curved(curve) : Straight(curve)) is not { } fit)
            yield break;
        foreach (PhotonTransferPoint point in curve.Points.Where(IsDrawable))
        {
            double expected = fit(point.Signal);
            if (expected > 0)
                yield return (
                    new BarPoint(
                        point.Signal,
                        100 * (point.Variance / expected - 1),
                        100 * point.VarianceUncertainty / expected
                    ),
                    point.InGainFit
                );
        }
    }

    /// <summary>Deviation of the fit that was not chosen from the one that was, %.</summary>
    private static IEnumerable<DataPoint> OtherFit(PhotonTransferCurve curve)
    {
        (Func<double, double>? chosen, Func<double, double>? other) =
            curve.Selected == GainForm.Curved ? (Curved(curve), Straight(curve)) : (Straight(curve), Curved(curve));
        return chosen is null || other is null
            ? []
            : Curve(curve, chosen).Select(point => new DataPoint(point.X, 100 * (other(point.X) / point.Y - 1)));
    }

    /// <summary>The straight line; null when it was not fitted.</summary>
    internal static Func<double, double>? Straight(PhotonTransferCurve curve) =>
        curve.Slope is { } slope ? signal => slope.Value * signal + (curve.Intercept?.Value ?? 0) : null;

    /// <summary>The curved line; null when it was not fitted.</summary>
    internal static Func<double, double>? Curved(PhotonTransferCurve curve) =>
        curve is { GainCurved: { Value: > 0 } gain, Curvature: { } curvature }
            ? signal => signal / gain.Value * (1 + curvature.Value * signal)
            : null;

    private static IEnumerable<DataPoint> Curve(PhotonTransferCurve curve, Func<double, double>? fit)
    {
        if (fit is null)
            return [];
        double[] signals = [.. curve.Points.Where(IsDrawable).Select(point => point.Signal)];
        double low = signals.Min(),
            high = Math.Max(low * 1.01, curve.FitLimit > 0 ? Math.Min(curve.FitLimit, signals.Max()) : signals.Max());
        return Enumerable
            .Range(0, LinePoints)
            .Select(i => low * Math.Pow(high / low, i / (LinePoints - 1.0)))
            .Select(signal => new DataPoint(signal, fit(signal)))
            .Where(point => point.Y > 0);
    }

    private static bool IsDrawable(PhotonTransferPoint point) => point is { Signal: > 0, Variance: > 0 };
}
