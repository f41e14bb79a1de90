namespace SensorProfile.Decisions.Shots;

/// <summary>How thorough a session is.</summary>
/// <param name="Bias">Bias frames.</param>
/// <param name="Temperatures">Temperatures for the darks.</param>
/// <param name="Exposures">Dark exposures at each temperature.</param>
/// <param name="DarkFrames">Frames of each.</param>
/// <param name="FlatLevels">Flat pairs.</param>
/// <param name="Longest">Longest dark, s.</param>
internal sealed record ShotProgramme(
    int Bias,
    int Temperatures,
    int Exposures,
    int DarkFrames,
    int FlatLevels,
    double Longest
)
{
    private static readonly double[] parts = [1, 1.0 / 3, 0.1, 1.0 / 30, 2.0 / 3, 1.0 / 60];

    private static readonly ShotProgramme[] grades =
    [
        new(8, 3, 3, 2, 6, 0),
        new(16, 3, 3, 4, 6, 0),
        new(16, 3, 4, 4, 8, 0),
        new(32, 4, 4, 4, 8, 0),
        new(32, 5, 5, 4, 10, 0),
        new(32, 6, 6, 4, 10, 0),
    ];

    private static readonly double[] lengths = [1, 0.5, 0.25, 0.1];

    /// <summary>
    /// From the minimum that measures everything (3 temperatures, 3 exposures, pairs, 6 flat levels) to the most that
    /// is worth a night.
    /// </summary>
    internal static IEnumerable<ShotProgramme> All(double longest) =>
        from grade in grades
        from share in lengths
        select grade with
        {
            Longest = Nice(longest * share),
        };

    /// <summary>Dark exposures, shortest first, s.</summary>
    internal IReadOnlyList<double> DarkExposures =>
        [.. parts.Take(Exposures).Select(p => Nice(p * Longest)).Distinct().Order()];

    private static double Nice(double seconds) =>
        seconds >= 10 ? Math.Round(seconds)
        : seconds >= 1 ? Math.Round(seconds, 1)
        : Math.Round(seconds, 2);
}
