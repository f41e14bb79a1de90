using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Planned lights for which the profile cannot say which darks they need.</summary>
/// <param name="Exposure">s.</param>
/// <param name="From">Coldest of them, °C.</param>
/// <param name="To">Warmest of them, °C.</param>
/// <param name="Lights">Approximate number.</param>
/// <param name="Refusal">Why.</param>
/// <param name="Settling">Frames to add to the profile.</param>
internal sealed record UnplannedLights(
    double Exposure,
    double From,
    double To,
    int Lights,
    Finding Refusal,
    IReadOnlyList<SettlingFrames> Settling
);
