namespace SensorProfile.DarkCurrent.Laws;

/// <summary>I = I_ref·2^((T − T_ref)/ΔT₂) (the form EMVA Standard 1288 uses).</summary>
internal sealed class DoublingLaw(double referenceTemperature, bool hasFloor = false)
    : ShapedLaw(referenceTemperature, hasFloor)
{
    private static readonly (string, string)[] Names =
    [
        (QuantityNames.RateAtReference, "e-/px/s"),
        (QuantityNames.DoublingTemperature, "°C"),
    ];

    /// <inheritdoc/>
    public override string Formula => "I_ref·2^((T − T_ref)/ΔT2)";

    // 1.5 to 40 °C in steps of 8 %.
    /// <inheritdoc/>
    public override IReadOnlyList<double> TrialShapes { get; } =
    [.. Enumerable.Range(0, 43).Select(i => 1.5 * Math.Pow(1.08, i))];

    /// <inheritdoc/>
    protected override string BaseName => "doubling";

    /// <inheritdoc/>
    protected override IReadOnlyList<(string Name, string Unit)> ThermalParameters => Names;

    /// <inheritdoc/>
    public override double Exponent(double temperatureCelsius, double shape) =>
        Math.Log(2) * (temperatureCelsius - ReferenceTemperature) / shape;

    /// <inheritdoc/>
    protected override double ExponentSlope(double temperatureCelsius, double shape) => Math.Log(2) / shape;

    /// <inheritdoc/>
    protected override double ExponentByShape(double temperatureCelsius, double shape) =>
        -Exponent(temperatureCelsius, shape) / shape;
}
