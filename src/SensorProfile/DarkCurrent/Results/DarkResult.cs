using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Results;

/// <summary>Results from the dark frames.</summary>
internal sealed record DarkResult
{
    /// <summary>Dark current in ADU, when no gain is known.</summary>
    public DarkCurrentProfile? ProfileAdu { get; init; }

    /// <summary>The temperatures with their lines in ADU, when no gain is known.</summary>
    public IReadOnlyList<DarkTemperature> TemperaturesAdu { get; init; } = [];

    /// <summary>Nights without a sensor temperature.</summary>
    public IReadOnlyList<DarkNight> Nights { get; init; } = [];

    /// <summary>Dark current for the profile; null without usable darks.</summary>
    public DarkCurrentProfile? Profile { get; init; }

    /// <summary>The temperatures with their frames, coldest first, for the per-pixel maps.</summary>
    public IReadOnlyList<DarkTemperature> Temperatures { get; init; } = [];
}
