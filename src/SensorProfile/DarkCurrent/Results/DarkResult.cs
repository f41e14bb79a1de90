using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Results;

/// <summary>What the dark frames say.</summary>
internal sealed record DarkResult
{
    /// <summary>For the profile; null without usable darks.</summary>
    public DarkCurrentProfile? Profile { get; init; }

    /// <summary>The temperatures with their frames, coldest first: for the per-pixel maps.</summary>
    public IReadOnlyList<DarkTemperature> Temperatures { get; init; } = [];
}
