namespace SensorProfile.Profiles.Darks;

/// <summary>One parameter of a model: a quantity with a name.</summary>
/// <param name="Name">rateAtReference, doublingTemperature, activationEnergy, diffusion, depletion, floor …</param>
/// <param name="Value">The best estimate.</param>
/// <param name="StandardUncertainty">One standard uncertainty, in the unit of the value.</param>
/// <param name="Unit">Unit as printed.</param>
/// <param name="Samples">Number of points behind the fit.</param>
/// <param name="Method">The fit.</param>
public sealed record ModelParameter(
    string Name,
    double Value,
    double StandardUncertainty,
    string Unit,
    long Samples,
    string Method
);
