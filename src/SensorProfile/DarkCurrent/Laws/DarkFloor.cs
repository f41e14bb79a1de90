using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// The part of a measured dark current that does not fall with temperature: a light leak, or glow.
/// </summary>
/// <param name="Share">Share of the rate at the reference temperature, 0…1.</param>
/// <param name="ThermalDoubling">Temperature rise that doubles the rate without the floor, °C.</param>
internal sealed record DarkFloor(double Share, Measurement ThermalDoubling)
{
    internal const double LargestShare = 0.25;

    /// <summary>Whether the floor is so large that the doubling temperature of the total rate misleads.</summary>
    public bool IsLarge => Share > LargestShare;

    /// <summary>Takes the floor from the selected law; null when the law has no significant floor.</summary>
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
