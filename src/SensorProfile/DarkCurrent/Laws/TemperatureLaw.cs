namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// A law of dark current against temperature: a formula with named parameters, optionally plus a constant floor.
/// </summary>
/// <remarks>
/// Rates are in e-/px/s, temperatures in °C at the interface and K inside. The floor (glow, light leak) is always the
/// last parameter.
/// </remarks>
internal abstract class TemperatureLaw(double referenceTemperature, bool hasFloor)
{
    /// <summary>Temperature to which the amplitudes refer, °C.</summary>
    public double ReferenceTemperature { get; } = referenceTemperature;

    /// <summary>Whether a constant floor is added.</summary>
    public bool HasFloor { get; } = hasFloor;

    /// <summary>doubling, arrhenius or two-process, each also with "+floor".</summary>
    public string Name => HasFloor ? BaseName + "+floor" : BaseName;

    /// <summary>Names and units of the parameters, in order.</summary>
    public IReadOnlyList<(string Name, string Unit)> Parameters =>
        HasFloor ? [.. ThermalParameters, ("floor", "e-/px/s")] : ThermalParameters;

    /// <summary>Number of parameters.</summary>
    public int Count => ThermalParameters.Count + (HasFloor ? 1 : 0);

    /// <summary>The formula on one line.</summary>
    public abstract string Formula { get; }

    /// <summary>Whether a parameter scales with the gain: rates do, temperatures and energies do not.</summary>
    public bool IsRate(int parameter) => Parameters[parameter].Unit == "e-/px/s";

    /// <summary>Rate at a temperature, e-/px/s, floor included.</summary>
    public double Rate(double temperatureCelsius, ReadOnlySpan<double> parameters) =>
        Thermal(temperatureCelsius, parameters) + (HasFloor ? parameters[^1] : 0);

    /// <summary>
    /// Temperature rise that doubles the rate at its local slope, °C: ln 2/(d ln I/dT) = ln 2·I/(dI/dT), floor included
    /// in I.
    /// </summary>
    public double Doubling(double temperatureCelsius, ReadOnlySpan<double> parameters) =>
        Math.Log(2) * Rate(temperatureCelsius, parameters) / Slope(temperatureCelsius, parameters);

    /// <summary>The same for the thermal part, without the floor.</summary>
    public double ThermalDoubling(double temperatureCelsius, ReadOnlySpan<double> parameters) =>
        Math.Log(2) * Thermal(temperatureCelsius, parameters) / Slope(temperatureCelsius, parameters);

    /// <summary>∂I/∂p.</summary>
    public void Gradient(double temperatureCelsius, ReadOnlySpan<double> parameters, Span<double> gradient)
    {
        ThermalGradient(temperatureCelsius, parameters, gradient);
        if (HasFloor)
            gradient[Count - 1] = 1;
    }

    /// <summary>Thermal part of the rate, the part that cooling reduces, e-/px/s.</summary>
    public abstract double Thermal(double temperatureCelsius, ReadOnlySpan<double> parameters);

    /// <summary>dI/dT, e-/px/s per °C.</summary>
    public abstract double Slope(double temperatureCelsius, ReadOnlySpan<double> parameters);

    /// <summary>The name without the floor.</summary>
    protected abstract string BaseName { get; }

    /// <summary>Parameters of the thermal part.</summary>
    protected abstract IReadOnlyList<(string Name, string Unit)> ThermalParameters { get; }

    /// <summary>∂I/∂p of the thermal part.</summary>
    protected abstract void ThermalGradient(
        double temperatureCelsius,
        ReadOnlySpan<double> parameters,
        Span<double> gradient
    );

    /// <summary>The law with this name, as stored in a model.</summary>
    /// <exception cref="ArgumentException">No law has this name.</exception>
    public static TemperatureLaw Named(string name, double referenceTemperature)
    {
        bool floor = name.EndsWith("+floor", StringComparison.Ordinal);
        return (floor ? name[..^"+floor".Length] : name) switch
        {
            "doubling" => new DoublingLaw(referenceTemperature, floor),
            "arrhenius" => new ArrheniusLaw(referenceTemperature, floor),
            "two-process" => new TwoProcessLaw(referenceTemperature, floor),
            _ => throw new ArgumentException(
                $"No temperature law is called '{name}'; known are doubling, arrhenius and two-process, each also "
                    + "with '+floor'.",
                nameof(name)
            ),
        };
    }

    /// <summary>Every law, simplest first.</summary>
    public static IReadOnlyList<TemperatureLaw> All(double referenceTemperature) =>
        [
            new DoublingLaw(referenceTemperature),
            new ArrheniusLaw(referenceTemperature),
            new TwoProcessLaw(referenceTemperature),
            new DoublingLaw(referenceTemperature, true),
            new ArrheniusLaw(referenceTemperature, true),
            new TwoProcessLaw(referenceTemperature, true),
        ];
}
