using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Which darks do I shoot, and how many?</summary>
public sealed record PlanQuestion
{
    /// <summary>
    /// The planned lights; if empty, 40 lights of 300 s at the set point that follows from the profile, with a finding.
    /// </summary>
    public IReadOnlyList<PlannedLights> Lights { get; init; } = [];

    /// <summary>The sky; null for the default one, with a finding.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>The accepted losses: mismatch and number of darks together stay within them.</summary>
    public LossLimits Limits { get; init; } = new();

    /// <summary>False for a camera without a cooler.</summary>
    public bool Cooled { get; init; } = true;

    /// <summary>Time between two darks for read-out and saving, s.</summary>
    internal double OverheadSeconds { get; init; } = 2;

    /// <summary>Fewest frames in a master, so that a cosmic-ray hit can be recognised.</summary>
    internal int MinFrames { get; init; } = MinDarks.MinInMaster;
}
