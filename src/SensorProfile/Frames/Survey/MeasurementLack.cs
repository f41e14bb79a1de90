using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Survey;

/// <summary>Frames that a measurement still lacks.</summary>
/// <param name="Measurement">What cannot be measured, or not well.</param>
/// <param name="Settings">The mode concerned.</param>
/// <param name="Kind">Kind of the missing frames.</param>
/// <param name="Frames">Number of further frames that would be enough.</param>
/// <param name="Sentence">The lack in plain words.</param>
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
