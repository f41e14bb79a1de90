namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// A law with one amplitude, the rate at the reference temperature, and one shape parameter: I = I_ref·exp(g(T; s)),
/// g(T_ref) = 0.
/// </summary>
internal abstract class ShapedLaw(double referenceTemperature, bool hasFloor)
    : TemperatureLaw(referenceTemperature, hasFloor)
{
    /// <summary>Shape values from which a fit may start; they cover everything a sensor could show.</summary>
    public abstract IReadOnlyList<double> TrialShapes { get; }

    /// <inheritdoc/>
    public override double Thermal(double temperatureCelsius, ReadOnlySpan<double> parameters) =>
        parameters[0] * Math.Exp(Exponent(temperatureCelsius, parameters[1]));

    /// <inheritdoc/>
    public override double Slope(double temperatureCelsius, ReadOnlySpan<double> parameters) =>
        Thermal(temperatureCelsius, parameters) * ExponentSlope(temperatureCelsius, parameters[1]);

    /// <summary>g(T; s) = ln(I/I_ref).</summary>
    public abstract double Exponent(double temperatureCelsius, double shape);

    /// <summary>dg/dT, 1/°C.</summary>
    protected abstract double ExponentSlope(double temperatureCelsius, double shape);

    /// <summary>dg/ds.</summary>
    protected abstract double ExponentByShape(double temperatureCelsius, double shape);

    /// <inheritdoc/>
    protected override void ThermalGradient(
        double temperatureCelsius,
        ReadOnlySpan<double> parameters,
        Span<double> gradient
    )
    {
        double ratio = Math.Exp(Exponent(temperatureCelsius, parameters[1]));
        gradient[0] = ratio;
        gradient[1] = parameters[0] * ratio * ExponentByShape(temperatureCelsius, parameters[1]);
    }
}
