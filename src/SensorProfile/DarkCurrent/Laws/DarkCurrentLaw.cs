using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>A fitted temperature law that can be evaluated at any temperature, also from a stored profile.</summary>
internal sealed class DarkCurrentLaw
{
    private readonly FittedLaw fit;
    private readonly long samples;

    private DarkCurrentLaw(FittedLaw fit, long samples) => (this.fit, this.samples) = (fit, samples);

    /// <summary>doubling, arrhenius or two-process, each also with "+floor".</summary>
    public string Name => fit.Law.Name;

    /// <summary>Restores a law from a profile's record.</summary>
    /// <param name="model">The record.</param>
    /// <param name="referenceTemperature">The profile's reference temperature, °C, to which the record's rates
    /// refer.</param>
    /// <exception cref="ArgumentException">The record's name, parameters or covariance do not belong to a known
    /// law.</exception>
    public static DarkCurrentLaw FromModel(DarkCurrentModel model, double referenceTemperature) =>
        new(
            ModelRecord.ToFit(model, referenceTemperature),
            model.Parameters.Count > 0 ? model.Parameters[0].Samples : 0
        );

    /// <summary>
    /// Dark rate at a temperature, floor included, e-/px/s, with the uncertainty of this law's parameters.
    /// </summary>
    public Measurement RateAt(double temperatureCelsius)
    {
        (double value, double uncertainty) = fit.RateAt(temperatureCelsius);
        return new Measurement(value, uncertainty, "e-/px/s", samples, Name + " law");
    }
}
