using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Plots;

/// <summary>Rate of a model at a temperature, with its uncertainty, e-/px/s; null where the model gives none.</summary>
/// <param name="model">A fitted model of the profile.</param>
/// <param name="temperature">°C.</param>
internal delegate Measurement? RateLaw(DarkCurrentModel model, double temperature);
