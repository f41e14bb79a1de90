using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Survey;

/// <summary>What a measurement still lacks.</summary>
/// <param name="Measurement">What cannot be measured, or not well.</param>
/// <param name="Settings">The mode it is about.</param>
/// <param name="Kind">Kind of the frames that are missing.</param>
/// <param name="Frames">How many more frames would do.</param>
/// <param name="Sentence">In plain words.</param>
internal sealed record MeasurementLack(
    MeasurementKind Measurement,
    ModeSettings Settings,
    FrameKind Kind,
    int Frames,
    string Sentence
);

/// <summary>What frames are taken for: the word in kebab-case is what scripts read.</summary>
internal enum MeasurementKind
{
    ReadNoise,
    PixelNoiseMap,
    Gain,
    Linearity,
    DarkCurrent,
    TemperatureLaw,
}
