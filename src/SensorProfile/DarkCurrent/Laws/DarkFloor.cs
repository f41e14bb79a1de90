using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// The part of a measured dark current that does not fall with temperature: a light leak, or glow.
/// </summary>
/// <param name="Share">Of the rate at the reference temperature, 0…1.</param>
/// <param name="ThermalDoubling">Temperature rise that doubles what is left without it, °C.</param>
internal sealed record DarkFloor(double Share, Measurement ThermalDoubling)
{
    internal const double LargestShare = 0.25;

    /// <summary>Whether it is no longer a small thing: the doubling temperature of the whole then misleads.</summary>
    public bool IsLarge => Share > LargestShare;

    /// <summary>Reads it from the selected law; null when that has no floor, or none that stands out.</summary>
    /// <param name="dark">Dark current of a profile.</param>
    public static DarkFloor? Find(DarkCurrentProfile dark)
    {
        ArgumentNullException.ThrowIfNull(dark);
        if (
            dark.ReferenceTemperature is not { } reference
            || dark.Models.FirstOrDefault(m => m.Name == dark.Selected) is not { } model
            || model.Parameters.FirstOrDefault(p => p.Name == "floor") is not { } floor
            || floor.Value <= 2 * floor.StandardUncertainty
            || model.Covariance.Count != model.Parameters.Count
        )
            return null;
        FittedLaw fit = ModelRecord.ToFit(model, reference);
        (double doubling, double uncertainty) = fit.ThermalDoublingAt(reference);
        if (!double.IsFinite(doubling) || !double.IsFinite(uncertainty))
            return null;
        return new(
            floor.Value / fit.RateAt(reference).Value,
            new Measurement(doubling, uncertainty, "°C", floor.Samples, "law without its floor")
        );
    }
}
