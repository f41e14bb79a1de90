namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>
/// Temperatures of one set of frames from their hot pixels, relative to the mean of the longest exposure at the same
/// temperature, °C.
/// </summary>
/// <param name="Frames">Temperature of each frame, with its full uncertainty.</param>
/// <param name="OwnUncertainties">Part of each uncertainty that belongs to that frame alone, °C.</param>
/// <param name="Mean">Mean of all frames; the uncertainty they share does not shrink with their number. Exactly 0 for
/// the longest exposure.</param>
internal sealed record ThermometerSet(
    IReadOnlyList<Measurement> Frames,
    IReadOnlyList<double> OwnUncertainties,
    Measurement Mean
);
