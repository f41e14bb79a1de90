using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>How old master darks are checked.</summary>
/// <remarks>
/// The stack that the masters serve; its exposure is that of each master. Without a gain no sky is counted, which is
/// stricter.
/// </remarks>
public sealed record DarkLibraryOptions : StackDescription
{
    /// <summary>
    /// Accepted standard deviation of the residual over rows or columns, as a share of the noise of the stack: lines
    /// become visible long before they are measurable.
    /// </summary>
    internal double StructureFactor { get; init; } = 0.25;

    /// <summary>Fresh darks match a master when their temperatures differ by no more than this, °C.</summary>
    public double TemperatureTolerance { get; init; } = 1;

    /// <summary>Settings of the profile's mode; null when the profile has only one.</summary>
    public ModeSettings? Mode { get; init; }
}
