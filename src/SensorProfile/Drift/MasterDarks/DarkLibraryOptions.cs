using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>How old master darks are checked.</summary>
public sealed record DarkLibraryOptions
{
    /// <summary>Lights in the stack that the masters serve.</summary>
    public int Lights { get; init; } = 40;

    /// <summary>
    /// The sky over those lights; null for a dark one, the strictest of the broad-band skies. Without a gain no sky is
    /// counted, which is stricter still.
    /// </summary>
    public SkyRate? Sky { get; init; }

    /// <summary>The accepted losses.</summary>
    public LossLimits Limits { get; init; } = new();

    /// <summary>
    /// Accepted standard deviation of the residual over rows or columns, in the noise of the stack: lines are seen long
    /// before they are measured.
    /// </summary>
    public double StructureFactor { get; init; } = 0.25;

    /// <summary>Fresh darks serve a master when their temperatures differ by no more than this, °C.</summary>
    public double TemperatureTolerance { get; init; } = 1;

    /// <summary>Settings of the profile's mode; null when it holds one only.</summary>
    public ModeSettings? Mode { get; init; }
}
