namespace SensorProfile.Profiles.Pattern;

/// <summary>A step between two parts of the sensor that are read through different amplifiers or taps.</summary>
/// <param name="Direction">How the parts lie: across (the boundary runs along a column), or down.</param>
/// <param name="Number">First column (or row) of the later part, 1-based as FITS counts.</param>
/// <param name="Part">"whole" length of the boundary, or its "first half" or "second half".</param>
/// <param name="Kind">What changes: level, noise or response.</param>
/// <param name="Step">Later part minus earlier part: ADU, % of the signal, or % of the noise.</param>
/// <param name="Chance">Upper limit of the probability that the strongest step of a sensor without boundaries is this
/// strong.</param>
public sealed record SensorBoundary(
    PatternDirection Direction,
    int Number,
    string Part,
    PatternKind Kind,
    Measurement Step,
    double Chance
);
