using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Survey;

/// <summary>Frames that a measurement still lacks.</summary>
/// <param name="Measurement">read-noise, pixel-noise-map, gain, linearity, dark-current or temperature-law.</param>
/// <param name="Settings">The mode concerned.</param>
/// <param name="Kind">Kind of the missing frames.</param>
/// <param name="Frames">Number of further frames that would be enough.</param>
/// <param name="Sentence">The lack in plain words.</param>
internal sealed record MeasurementLack(
    string Measurement,
    ModeSettings Settings,
    FrameKind Kind,
    int Frames,
    string Sentence
);
