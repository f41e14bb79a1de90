using SensorProfile.Drift.Patches;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>What became of one master dark.</summary>
public sealed record MasterVerdict
{
    /// <summary>The file as it was given.</summary>
    public required string File { get; init; }

    /// <summary>What to do with it.</summary>
    public required CheckVerdict Verdict { get; init; }

    /// <summary>
    /// Standard deviation that the master adds to each calibrated light over its ordinary pixels, the noise of the
    /// fresh darks taken out; null when not measured.
    /// </summary>
    public Measurement? Residual { get; init; }

    /// <summary>Rise of the stack's noise that follows, %; null when not measured.</summary>
    public Measurement? Loss { get; init; }

    /// <summary>Noise of the stack it serves, per pixel, in the unit of <see cref="Residual"/>.</summary>
    public Measurement? StackNoise { get; init; }

    /// <summary>The residual by its kinds.</summary>
    internal IReadOnlyList<ResidualPart> Parts { get; init; } = [];

    /// <summary>
    /// Places where pixels that are hot now and not in it stand together, the surest first; empty unless those pixels
    /// call for a retake.
    /// </summary>
    internal IReadOnlyList<GrowingPatch> Patches { get; init; } = [];

    /// <summary>
    /// Dark signal in the fresh darks over that in the master, from the hot pixels; 1 when both are alike.
    /// </summary>
    internal Measurement? SignalRatio { get; init; }

    /// <summary>How its values relate to the camera's: "ADU, bias in it", "0 to 1, bias taken off" …</summary>
    internal string Scale { get; init; } = "";

    /// <summary>
    /// How it lies against the fresh darks, in words, where it had to be brought back before it was judged; else null.
    /// </summary>
    internal string? Realigned { get; init; }

    /// <summary>The settings it says it was taken at.</summary>
    internal ModeSettings? Settings { get; init; }

    /// <summary>Whether it is cropped or binned against the fresh darks.</summary>
    internal bool OtherSize { get; init; }

    /// <summary>Exposure its header states, s.</summary>
    public double? Exposure { get; init; }

    /// <summary>Temperature its header states, °C.</summary>
    public double? Temperature { get; init; }

    /// <summary>Fresh darks it was compared with.</summary>
    internal int FreshFrames { get; init; }

    /// <summary>Why.</summary>
    public required MasterReason Reason { get; init; }
}
