using SensorProfile.Fitting.Models;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>The brightest glow of a sensor.</summary>
/// <param name="Where">Its place, in words.</param>
/// <param name="PeakAtReference">Rate at the peak, e-/px/s at the reference temperature.</param>
/// <param name="ReferenceCelsius">That temperature, °C.</param>
/// <param name="PerDegree">Growth of its own ln rate with temperature, 1/°C; null when not measured.</param>
/// <param name="ExposureExponent">p of glow ∝ exposure^p.</param>
/// <param name="LongestExposure">Exposure at which the rate was measured, s.</param>
internal sealed record GlowSource(
    string Where,
    double PeakAtReference,
    double ReferenceCelsius,
    double? PerDegree,
    double ExposureExponent,
    double LongestExposure
)
{
    private const double MinSignal = 3; // standard uncertainties

    /// <summary>Electrons at the peak after an exposure.</summary>
    internal double ElectronsAt(double celsius, double exposureSeconds, SensorModel sensor) =>
        PeakAtReference * Factor(celsius, exposureSeconds, sensor) * exposureSeconds;

    /// <summary>Mean rate over an exposure at a temperature, in units of the rate that was measured.</summary>
    /// <remarks>
    /// A glow whose own law is unknown follows the typical pixel: the cautious choice for darks, since a glow that
    /// ignores the temperature leaves no residual.
    /// </remarks>
    internal double Factor(double celsius, double exposureSeconds, SensorModel sensor)
    {
        double growth = PerDegree is double slope
            ? Math.Exp(slope * (celsius - ReferenceCelsius))
            : sensor.Law.ThermalAt(celsius) / sensor.Law.ThermalAt(ReferenceCelsius);
        return ExposureExponent == 1
            ? growth
            : growth * Math.Pow(exposureSeconds / LongestExposure, ExposureExponent - 1);
    }

    /// <summary>
    /// Growth of ln rate with temperature and its standard uncertainty, 1/°C: from the stated doubling temperature,
    /// else from the rates at each temperature, which may show no growth; null with fewer than two of them.
    /// </summary>
    internal static (double Slope, double Uncertainty)? Law(GlowRegion glow)
    {
        if (glow.DoublingTemperature is { Value: > 0 } d)
            return (Math.Log(2) / d.Value, Math.Log(2) * d.StandardUncertainty / (d.Value * d.Value));
        GlowRate[] seen =
        [
            .. glow.Rates.Where(r =>
                r.Rate.StandardUncertainty > 0 && r.Rate.Value > MinSignal * r.Rate.StandardUncertainty
            ),
        ];
        if (seen.Select(r => r.Temperature).Distinct().Count() < 2)
            return null;
        StraightLine line = StraightLine.Fit(
            [.. seen.Select(r => r.Temperature)],
            [.. seen.Select(r => Math.Log(r.Rate.Value))],
            [.. seen.Select(r => r.Rate.StandardUncertainty / r.Rate.Value)]
        );
        return (line.Slope, line.SlopeUncertainty * Math.Sqrt(Math.Max(1, line.ReducedChiSquared)));
    }
}
