using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// A fitted temperature law, possibly from a stored profile, that can be evaluated at any temperature.
/// </summary>
internal sealed class DarkCurrentLaw
{
    private readonly FittedLaw fit;
    private readonly long samples;

    private DarkCurrentLaw(FittedLaw fit, long samples) => (this.fit, this.samples) = (fit, samples);

    /// <summary>doubling, arrhenius or two-process, each also with "+floor".</summary>
    public string Name => fit.Law.Name;

    /// <summary>Restores a law from the record in a profile.</summary>
    /// <param name="model">The record.</param>
    /// <param name="referenceTemperature">Reference temperature of the profile, °C, to which the rates in the record
    /// refer.</param>
    /// <exception cref="ArgumentException">The name, parameters or covariance of the record do not match a known
    /// law.</exception>
    public static DarkCurrentLaw FromModel(DarkCurrentModel model, double referenceTemperature) =>
        new(
            ModelRecord.ToFit(model, referenceTemperature),
            model.Parameters.Count > 0 ? model.Parameters[0].Samples : 0
        );

    /// <summary>
    /// Dark rate at a temperature, floor included, e-/px/s; the uncertainty is that of the parameters of this law.
    /// </summary>
    public Measurement RateAt(double temperatureCelsius)
    {
        (double value, double uncertainty) = fit.RateAt(temperatureCelsius);
        return new Measurement(value, uncertainty, "e-/px/s", samples, Name + " law");
    }
}
