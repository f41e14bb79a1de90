namespace SensorProfile.Decisions.Tolerance;

/// <summary>What one cause alone would allow.</summary>
/// <param name="Cause">Which.</param>
/// <param name="Warmer">How much warmer than the lights darks may be, °C; null when unlimited.</param>
/// <param name="Colder">How much colder than the lights darks may be, °C; null when unlimited.</param>
/// <param name="Exposure">How much the exposure may differ, s; null when unlimited.</param>
/// <param name="Known">False when the profile holds too little to judge this cause; it then limits nothing.</param>
internal sealed record CauseTolerance(
    BindingCause Cause,
    Measurement? Warmer,
    Measurement? Colder,
    Measurement? Exposure,
    bool Known
);
