using SensorProfile.Fitting.Models;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>I = I_ref·(T/T_ref)^m·exp(−(E_a/k)(1/T − 1/T_ref)), T in K.</summary>
/// <remarks>A·T^m·exp(−E_a/kT), with the amplitude written as the rate at T_ref, which keeps amplitude and energy
/// nearly uncorrelated. Fits use m = 0: most published activation energies have that form, and over the range of a
/// cooler m cannot be told from E_a (m = 3 lowers E_a by about 3kT).</remarks>
internal sealed class ArrheniusLaw(double referenceTemperature, bool hasFloor = false, double power = 0)
    : ShapedLaw(referenceTemperature, hasFloor)
{
    private static readonly (string, string)[] Names =
    [
        (QuantityNames.RateAtReference, "e-/px/s"),
        ("activationEnergy", "eV"),
    ];

    private double ReferenceKelvin => ReferenceTemperature + PhysicalConstants.ZeroCelsius;

    /// <inheritdoc/>
    public override string Formula => "I_ref·exp(−(E_a/k)(1/T − 1/T_ref)), m = 0";

    // 0.1 to 2 eV in steps of 8 %.
    /// <inheritdoc/>
    public override IReadOnlyList<double> TrialShapes { get; } =
    [.. Enumerable.Range(0, 40).Select(i => 0.1 * Math.Pow(1.08, i))];

    /// <inheritdoc/>
    protected override string BaseName => "arrhenius";

    /// <inheritdoc/>
    protected override IReadOnlyList<(string Name, string Unit)> ThermalParameters => Names;

    /// <inheritdoc/>
    public override double Exponent(double temperatureCelsius, double shape) =>
        shape * ExponentByShape(temperatureCelsius, shape)
        + power * Math.Log(Kelvin(temperatureCelsius) / ReferenceKelvin);

    /// <inheritdoc/>
    protected override double ExponentSlope(double temperatureCelsius, double shape)
    {
        double kelvin = Kelvin(temperatureCelsius);
        return shape / (PhysicalConstants.BoltzmannElectronVoltsPerKelvin * kelvin * kelvin) + power / kelvin;
    }

    /// <inheritdoc/>
    protected override double ExponentByShape(double temperatureCelsius, double shape) =>
        (1 / ReferenceKelvin - 1 / Kelvin(temperatureCelsius)) / PhysicalConstants.BoltzmannElectronVoltsPerKelvin;

    private static double Kelvin(double temperatureCelsius) => temperatureCelsius + PhysicalConstants.ZeroCelsius;
}
