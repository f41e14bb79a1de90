namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>
/// Temperatures of one set of frames by their hot pixels, against the mean of the longest exposure at the same
/// temperature, °C.
/// </summary>
/// <param name="Frames">Each frame, its uncertainty complete.</param>
/// <param name="OwnUncertainties">Of each frame the part that it shares with no other, °C.</param>
/// <param name="Mean">Of all frames: what they share is not made smaller by their number. 0 and certain for the longest
/// exposure.</param>
internal sealed record ThermometerSet(
    IReadOnlyList<Measurement> Frames,
    IReadOnlyList<double> OwnUncertainties,
    Measurement Mean
);
