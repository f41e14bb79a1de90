using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Survey;

/// <summary>What a measurement still lacks.</summary>
/// <param name="Measurement">read-noise, pixel-noise-map, gain, linearity, dark-current or temperature-law.</param>
/// <param name="Settings">The mode it is about.</param>
/// <param name="Kind">Kind of the frames that are missing.</param>
/// <param name="Frames">How many more frames would do.</param>
/// <param name="Sentence">In plain words.</param>
internal sealed record MeasurementLack(
    string Measurement,
    ModeSettings Settings,
    FrameKind Kind,
    int Frames,
    string Sentence
);
