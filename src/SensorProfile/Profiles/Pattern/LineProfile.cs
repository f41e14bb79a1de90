namespace SensorProfile.Profiles.Pattern;

/// <summary>
/// Means of the columns (or rows) of the mean bias frame, and their spectrum; reduced to at most 512 points each.
/// </summary>
public sealed record LineProfile
{
    /// <summary>Columns from left to right, or rows in the order of the file.</summary>
    public PatternDirection Direction { get; init; }

    /// <summary>Number of lines behind each point of <see cref="Deviations"/>.</summary>
    public int LinesPerPoint { get; init; }

    /// <summary>Mean of the lines minus that of the whole frame, ADU.</summary>
    public IReadOnlyList<double> Deviations { get; init; } = [];

    /// <summary>
    /// Periods of the spectrum's points, px, longest first; where several are merged, that of the strongest.
    /// </summary>
    public IReadOnlyList<double> Periods { get; init; } = [];

    /// <summary>Amplitude at each period, ADU: half of its swing.</summary>
    public IReadOnlyList<double> Amplitudes { get; init; } = [];

    /// <summary>
    /// Amplitude that chance exceeds anywhere in the spectrum only once in a million, ADU: a period above it is
    /// significant.
    /// </summary>
    public IReadOnlyList<double> Limits { get; init; } = [];
}
