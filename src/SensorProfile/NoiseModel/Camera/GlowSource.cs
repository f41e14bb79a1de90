namespace SensorProfile.NoiseModel.Camera;

/// <summary>The brightest glow of a sensor.</summary>
/// <param name="Where">In words.</param>
/// <param name="PeakAtReference">Rate at the peak, e-/px/s at the reference temperature.</param>
/// <param name="ReferenceCelsius">That temperature, °C.</param>
/// <param name="Doubling">Its own doubling temperature, °C; null when not measured.</param>
/// <param name="ExposureExponent">p of glow ∝ exposure^p.</param>
/// <param name="LongestExposure">Exposure at which the rate was measured, s.</param>
internal sealed record GlowSource(
    string Where,
    double PeakAtReference,
    double ReferenceCelsius,
    double? Doubling,
    double ExposureExponent,
    double LongestExposure
)
{
    /// <summary>Electrons at the peak after an exposure.</summary>
    /// <remarks>
    /// Where its own law is not known the glow follows the typical pixel: the cautious choice, since a glow that
    /// ignores the temperature leaves no residual.
    /// </remarks>
    internal double ElectronsAt(double celsius, double exposureSeconds, SensorModel sensor)
    {
        double growth = Doubling is double d
            ? Math.Pow(2, (celsius - ReferenceCelsius) / d)
            : sensor.Law.ThermalAt(celsius) / sensor.Law.ThermalAt(ReferenceCelsius);
        double time =
            ExposureExponent == 1
                ? exposureSeconds
                : LongestExposure * Math.Pow(exposureSeconds / LongestExposure, ExposureExponent);
        return PeakAtReference * growth * time;
    }
}
