namespace SensorProfile.Decisions.Tolerance;

/// <summary>What one cause alone would allow.</summary>
/// <param name="Cause">Which.</param>
/// <param name="Warmer">Darks warmer than the lights by, °C; null when unlimited.</param>
/// <param name="Colder">Darks colder than the lights by, °C; null when unlimited.</param>
/// <param name="Exposure">Exposure different by, s; null when unlimited.</param>
/// <param name="Known">False when the profile holds too little to judge this cause; it then limits nothing.</param>
internal sealed record CauseTolerance(
    BindingCause Cause,
    Measurement? Warmer,
    Measurement? Colder,
    Measurement? Exposure,
    bool Known
);
