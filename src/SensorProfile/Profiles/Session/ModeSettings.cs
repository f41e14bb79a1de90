namespace SensorProfile.Profiles.Session;

/// <summary>Settings that must agree before frames are compared. Null where the headers do not say.</summary>
public sealed record ModeSettings
{
    /// <summary>Gain setting of the camera (a number on its own scale, not e-/ADU).</summary>
    public double? Gain { get; init; }

    /// <summary>Offset (black level) setting.</summary>
    public double? Offset { get; init; }

    /// <summary>ISO setting.</summary>
    public double? Iso { get; init; }

    /// <summary>Binning, "1x1", "2x2" …</summary>
    public string Binning { get; init; } = "1x1";

    /// <summary>Read-out mode name.</summary>
    public string? Readout { get; init; }
}
