namespace SensorProfile.Profiles.Pattern;

/// <summary>A column or row that stands out from its neighbours, whole or in part.</summary>
/// <param name="Direction">Column or row.</param>
/// <param name="Number">Column or row, 1-based as FITS counts.</param>
/// <param name="From">First row (or column) of the part that stands out most clearly, 1-based: a quarter, a half or the
/// whole length.</param>
/// <param name="To">Its last row (or column), 1-based.</param>
/// <param name="Kind">What stands out: dark rate, level or response.</param>
/// <param name="Excess">Excess over the lines on either side: e-/px/s, ADU, or % of their signal.</param>
public sealed record DefectLine(
    LineDirection Direction,
    int Number,
    int From,
    int To,
    PatternKind Kind,
    Measurement Excess
);
