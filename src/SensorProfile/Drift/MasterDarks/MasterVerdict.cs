using SensorProfile.Drift.Patches;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>The verdict on one master dark.</summary>
public sealed record MasterVerdict
{
    internal MasterVerdict(MasterReason reason) => Reason = reason;

    /// <summary>Its path, as given.</summary>
    public required string File { get; init; }

    /// <summary>What to do with it.</summary>
    public required CheckVerdict Verdict { get; init; }

    /// <summary>
    /// Standard deviation that the master adds to each calibrated light, over the ordinary pixels and without the noise
    /// of the fresh darks; null when not measured.
    /// </summary>
    public Measurement? Residual { get; init; }

    /// <summary>Resulting rise of the stack's noise, %; null when not measured.</summary>
    public Measurement? Loss { get; init; }

    /// <summary>Noise of the stack it serves, per pixel, in the unit of <see cref="Residual"/>.</summary>
    public Measurement? StackNoise { get; init; }

    /// <summary>The residual split by kind.</summary>
    internal IReadOnlyList<ResidualPart> Parts { get; init; } = [];

    /// <summary>
    /// Places where pixels that are hot now but not in the master cluster, most significant first; empty unless those
    /// pixels call for a retake.
    /// </summary>
    internal IReadOnlyList<GrowingPatch> Patches { get; init; } = [];

    /// <summary>
    /// Dark signal in the fresh darks over that in the master, from the hot pixels; 1 when they match.
    /// </summary>
    internal Measurement? SignalRatio { get; init; }

    /// <summary>The interpretation of its values: "ADU, bias in it", "0 to 1, bias taken off" …</summary>
    internal string Scale { get; init; } = "";

    /// <summary>
    /// Its orientation relative to the fresh darks, in words, if it had to be turned back before the check; otherwise
    /// null.
    /// </summary>
    internal string? Realigned { get; init; }

    /// <summary>The settings in its header.</summary>
    internal ModeSettings? Settings { get; init; }

    /// <summary>Whether it is cropped or binned relative to the fresh darks.</summary>
    internal bool OtherSize { get; init; }

    /// <summary>Exposure in its header, s.</summary>
    public double? Exposure { get; init; }

    /// <summary>Temperature in its header, °C.</summary>
    public double? Temperature { get; init; }

    /// <summary>Number of fresh darks it was compared with.</summary>
    internal int FreshFrames { get; init; }

    /// <summary>The reason for the verdict.</summary>
    internal MasterReason Reason { get; init; }
}
