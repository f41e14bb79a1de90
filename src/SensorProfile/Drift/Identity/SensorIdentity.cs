using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.Identity;

/// <summary>Recognises a sensor by its pixels.</summary>
/// <remarks>
/// It is the same sensor when more hot pixels coincide, in any orientation, than chance explains, or when the ordinary
/// pixels show the same pattern, beyond chance and by more than a quarter of what one sensor would show (a pattern that
/// survives even when the hot pixels healed). It is another sensor when neither holds although one of them should: the
/// pattern, had it been the same, would stand clear of zero by the limits of both errors; or, where ordinary pixels
/// were not kept, so few hot pixels can be in common that no warm-up explains it. Every limit has an error probability
/// of 0.1 %.
/// </remarks>
/// <param name="Match">The decision.</param>
/// <param name="Votes">Hot pixels in common, and where the later frame lies in the earlier one.</param>
/// <param name="Pattern">Comparison of the ordinary pixels; null when not needed or not kept.</param>
internal sealed record SensorIdentity(SensorMatch Match, AlignmentVotes Votes, PatternCorrelation? Pattern)
{
    // a warm-up heals most hot pixels of a sensor, never all: with fewer than one in ten left it is another sensor
    private const double MinSurvivors = 0.1;

    // higher, since a sensor that was both warmed up and turned is rare
    private const double MinSurvivorsTurned = 0.25;

    // glow or rows common to two sensors leave a small correlation: a match must exceed this share of the expected one
    private const double MinOfExpected = 0.25;

    private static readonly double Limit = Probability.NormalQuantile(1 - HotPixelVotes.Chance);

    /// <summary>Compares a later session with an earlier one.</summary>
    /// <param name="earlier">Hot pixels of the earlier session.</param>
    /// <param name="later">Hot pixels of the later session.</param>
    /// <param name="pattern">Compares the ordinary pixels; called only when the hot ones do not decide.</param>
    public static SensorIdentity Compare(HotPixelSet earlier, HotPixelSet later, Func<PatternCorrelation?> pattern)
    {
        AlignmentVotes votes = HotPixelVotes.Find(later, earlier);
        if (votes.Found)
            return new SensorIdentity(SensorMatch.Same, votes, null);
        PatternCorrelation? ordinary = pattern();
        if (ordinary is not null && ShowsOneSensor(ordinary))
            return new SensorIdentity(SensorMatch.Same, votes, ordinary);
        bool patternWouldShow =
            ordinary is not null && ordinary.Expected - ordinary.Excess > 2 * Limit * ordinary.StandardError;
        bool hotWouldShow =
            votes.LargestShare < MinSurvivorsTurned && (votes.Unmoved ?? votes).LargestShare < MinSurvivors;
        return new SensorIdentity(
            patternWouldShow || hotWouldShow ? SensorMatch.Another : SensorMatch.CannotTell,
            votes,
            ordinary
        );
    }

    private static bool ShowsOneSensor(PatternCorrelation ordinary) =>
        ordinary.Excess > Limit * ordinary.StandardError && ordinary.Excess > MinOfExpected * ordinary.Expected;

    /// <summary>The evidence: "3 of 412 hot pixels in common, 1.2 expected by chance".</summary>
    public string Evidence
    {
        get
        {
            string hot =
                $"{Plain.Whole(Votes.Votes)} of {Plain.Whole(Votes.Pixels)} hot pixels in common, "
                + $"{Plain.Number(Votes.Expected, 2)} expected by chance";
            return Pattern is null
                ? hot
                : $"{hot}; the pattern of its ordinary pixels correlates at {Plain.Number(Math.Max(0, Pattern.Excess), 2)} "
                    + $"where one sensor would reach {Plain.Number(Pattern.Expected, 2)}";
        }
    }
}
