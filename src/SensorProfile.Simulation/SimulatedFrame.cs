using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation;

/// <summary>
/// One frame of a simulated night with the conditions under which it is taken. Its pixels are rendered on demand.
/// </summary>
internal sealed record SimulatedFrame
{
    /// <summary>Index within the night, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Number of its shot, from 1.</summary>
    public required int Shot { get; init; }

    /// <summary>Number within its shot, from 1.</summary>
    public required int NumberInShot { get; init; }

    /// <summary>File name, for example <c>dark_-10C_300s_001.fits</c>.</summary>
    public required string FileName { get; init; }

    /// <summary>Kind of frame.</summary>
    public required FrameKind Kind { get; init; }

    /// <summary>Exposure, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Set temperature, or ambient temperature of an uncooled camera, °C.</summary>
    public required double TargetCelsius { get; init; }

    /// <summary>True temperature of the die, °C.</summary>
    public required double DieCelsius { get; init; }

    /// <summary>Reading of the probe as written to the header, °C; null when missing.</summary>
    public required double? ReportedCelsius { get; init; }

    /// <summary>Start of the exposure, UTC.</summary>
    public required DateTimeOffset StartUtc { get; init; }

    /// <summary>Bias level of this frame minus the camera's, ADU (jitter, drift, first frame).</summary>
    public required double PedestalOffset { get; init; }

    /// <summary>
    /// Mean photo-electrons in a pixel of full response, including drift and jitter of the lamp, e-/px.
    /// </summary>
    public required double LightElectrons { get; init; }

    /// <summary>Stray light, mean over the frame, e-/px.</summary>
    public required double LeakElectrons { get; init; }

    /// <summary>
    /// Mean charge from earlier light released during the exposure into a pixel of full response, e-/px.
    /// </summary>
    public double PersistenceElectrons { get; init; }

    /// <summary>Factor on dark signal and glow (first frame after a pause).</summary>
    public required double DarkFactor { get; init; }

    /// <summary>Phase of the row-to-row flicker, rad.</summary>
    public required double FlickerPhase { get; init; }

    /// <summary>Pointing offset in x and y of a light frame, px.</summary>
    public required (double X, double Y) Dither { get; init; }

    /// <summary>Row (0-based) from which on the frame has no exposure; null for a whole frame.</summary>
    public required int? TornFromRow { get; init; }

    /// <summary>Faults of this frame.</summary>
    public required IReadOnlyList<Fault> Faults { get; init; }
}
