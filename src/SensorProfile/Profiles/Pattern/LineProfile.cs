namespace SensorProfile.Profiles.Pattern;

/// <summary>
/// Means of the columns (or rows) of the mean bias frame, and their spectrum; reduced to at most 512 points each.
/// </summary>
public sealed record LineProfile
{
    /// <summary>Columns from left to right, or rows from the first of the file on.</summary>
    public PatternDirection Direction { get; init; }

    /// <summary>Lines behind each point of <see cref="Deviations"/>.</summary>
    public int LinesPerPoint { get; init; }

    /// <summary>Mean of the lines less that of the whole frame, ADU.</summary>
    public IReadOnlyList<double> Deviations { get; init; } = [];

    /// <summary>
    /// Periods of the spectrum's points, px, longest first: where several are joined, that of the strongest.
    /// </summary>
    public IReadOnlyList<double> Periods { get; init; } = [];

    /// <summary>Amplitude at each period, ADU: half of its swing.</summary>
    public IReadOnlyList<double> Amplitudes { get; init; } = [];

    /// <summary>
    /// Amplitude that chance reaches anywhere in the spectrum once in a million, ADU: beyond it a period is
    /// significant.
    /// </summary>
    public IReadOnlyList<double> Limits { get; init; } = [];
}
