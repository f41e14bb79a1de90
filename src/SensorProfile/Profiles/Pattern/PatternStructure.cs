namespace SensorProfile.Profiles.Pattern;

/// <summary>
/// Spatial spread of the level without light (or of the response to light), split into the parts of rows, columns and
/// single pixels (EMVA Standard 1288, Release 4.0 Linear); temporal noise removed.
/// </summary>
public sealed record PatternStructure
{
    /// <summary>
    /// Standard deviation over all pixels (DSNU), e- (ADU when the gain is unknown); of the response (PRNU) in %.
    /// </summary>
    public Measurement? Total { get; init; }

    /// <summary>Part common to rows.</summary>
    public Measurement? Row { get; init; }

    /// <summary>Part common to columns.</summary>
    public Measurement? Column { get; init; }

    /// <summary>Part of the single pixels.</summary>
    public Measurement? Pixel { get; init; }

    /// <summary>Periods that stand out from the spectra, strongest first; empty when none does.</summary>
    public IReadOnlyList<PatternPeriod> Periods { get; init; } = [];

    /// <summary>
    /// Means of columns ("across") and rows ("down") with their spectra; empty for frames of fewer than 64 lines.
    /// </summary>
    public IReadOnlyList<LineProfile> Lines { get; init; } = [];
}
