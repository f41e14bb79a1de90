using SensorProfile.Fitting.Models;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>I = D·r(T)² + P·r(T), r(T) = (T/T_ref)^1.5·exp(−E_g(T)/2kT + E_g(T_ref)/2kT_ref).</summary>
/// <remarks>Diffusion ∝ T³·exp(−E_g/kT) and depletion ∝ T^1.5·exp(−E_g/2kT) currents (Widenhorn, Blouke, Weber, Rest
/// and Bodegom 2002, Proc. SPIE 4669, 193), with amplitudes written as rates at T_ref and the gap in Varshni's form,
/// <see cref="Silicon.Gap"/>, whose slope is included in the doubling temperature.</remarks>
internal sealed class TwoProcessLaw(double referenceTemperature, bool hasFloor = false)
    : TemperatureLaw(referenceTemperature, hasFloor)
{
    private static readonly (string, string)[] Names = [("diffusion", "e-/px/s"), ("depletion", "e-/px/s")];
    private readonly double logReference = Silicon.LogDepletionShape(
        referenceTemperature + PhysicalConstants.ZeroCelsius
    );

    /// <inheritdoc/>
    public override string Formula =>
        "diffusion T³·exp(−E_g/kT) + depletion T^1.5·exp(−E_g/2kT), E_g of Varshni's form";

    /// <inheritdoc/>
    protected override string BaseName => "two-process";

    /// <inheritdoc/>
    protected override IReadOnlyList<(string Name, string Unit)> ThermalParameters => Names;

    /// <inheritdoc/>
    public override double Thermal(double temperatureCelsius, ReadOnlySpan<double> parameters)
    {
        double ratio = Ratio(temperatureCelsius);
        return (parameters[0] * ratio + parameters[1]) * ratio;
    }

    /// <inheritdoc/>
    public override double Slope(double temperatureCelsius, ReadOnlySpan<double> parameters)
    {
        double ratio = Ratio(temperatureCelsius);
        return (2 * parameters[0] * ratio + parameters[1])
            * ratio
            * Silicon.LogDepletionSlope(temperatureCelsius + PhysicalConstants.ZeroCelsius);
    }

    /// <inheritdoc/>
    protected override void ThermalGradient(
        double temperatureCelsius,
        ReadOnlySpan<double> parameters,
        Span<double> gradient
    )
    {
        double ratio = Ratio(temperatureCelsius);
        (gradient[0], gradient[1]) = (ratio * ratio, ratio);
    }

    private double Ratio(double temperatureCelsius) =>
        Math.Exp(Silicon.LogDepletionShape(temperatureCelsius + PhysicalConstants.ZeroCelsius) - logReference);
}
