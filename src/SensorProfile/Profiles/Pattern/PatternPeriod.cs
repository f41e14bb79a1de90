namespace SensorProfile.Profiles.Pattern;

/// <summary>A regular pattern in the level without light or in the response to light.</summary>
/// <param name="Direction">Which way it repeats.</param>
/// <param name="Period">px.</param>
/// <param name="Amplitude">Half of its swing in the mean of the lines: ADU, or % of the signal in the response.</param>
/// <param name="Chance">Probability that the strongest of all periods is this strong by chance.</param>
public sealed record PatternPeriod(PatternDirection Direction, double Period, double Amplitude, double Chance);
