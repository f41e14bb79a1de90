using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Glow;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern;

/// <summary>What the per-pixel measurements give.</summary>
internal sealed record PatternResult
{
    /// <summary>For the profile.</summary>
    public required FixedPatternProfile Profile { get; init; }

    /// <summary>Rates.</summary>
    public required RateMaps Maps { get; init; }

    /// <summary>Defects.</summary>
    public required DefectMap Defects { get; init; }

    /// <summary>Glow at the reference temperature; null where none was found.</summary>
    public GlowField? Glow { get; init; }

    /// <summary>
    /// Temperature of frames by their hot pixels, °C, by name; empty where there is no such thermometer.
    /// </summary>
    public IReadOnlyDictionary<string, double> FrameTemperatures { get; init; } = new Dictionary<string, double>();

    /// <summary>What the user should know.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}
