using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Glow;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern;

/// <summary>Results of the per-pixel measurements.</summary>
internal sealed record PatternResult
{
    /// <summary>Fixed pattern for the profile.</summary>
    public required FixedPatternProfile Profile { get; init; }

    /// <summary>Maps of the dark rate.</summary>
    public required RateMaps Maps { get; init; }

    /// <summary>Map of the defects.</summary>
    public required DefectMap Defects { get; init; }

    /// <summary>Glow at the reference temperature; null when none was found.</summary>
    public GlowField? Glow { get; init; }

    /// <summary>Temperature of frames from their hot pixels, °C, by name; empty without such a thermometer.</summary>
    public IReadOnlyDictionary<string, double> FrameTemperatures { get; init; } = new Dictionary<string, double>();

    /// <summary>Findings for the user.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}
