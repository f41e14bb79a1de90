using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Is my dark library still good?</summary>
/// <remarks>
/// Verdict: keep | retake | cannot-tell. Quantities: lossWorst (%), the largest rise of a stack's noise by one of the
/// masters.
/// </remarks>
public sealed record DarkLibraryAnswer : WordedAnswer
{
    /// <summary>The verdict on the library: the worst of its masters.</summary>
    public required CheckVerdict Library { get; init; }

    /// <summary>One entry per master that was given, in that order.</summary>
    public IReadOnlyList<MasterVerdict> Masters { get; init; } = [];

    /// <summary>
    /// What to shoot at least, one line per exposure and temperature; empty when nothing needs to be retaken.
    /// </summary>
    public IReadOnlyList<DarksToShoot> Shoot { get; init; } = [];
}
