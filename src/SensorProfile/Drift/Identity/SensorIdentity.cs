using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.Identity;

/// <summary>Knows a sensor by its pixels.</summary>
/// <remarks>
/// One sensor when more hot pixels stand in the same places, in any orientation, than chance puts there, or when its
/// ordinary pixels show one pattern, by more than chance and by more than a quarter of what one sensor would show: a
/// sensor whose hot pixels healed keeps that. Another one when neither does,
/// although one of them would have shown: the pattern, had it been the same, would stand clear of zero by the limits
/// of both errors; or, where ordinary pixels were not kept, so few hot pixels can be in common that no warming up
/// explains it. All limits are those of a chance of 0.1 % of being wrong.
/// </remarks>
/// <param name="Match">The decision.</param>
/// <param name="Votes">Hot pixels in common and how the later frame lies.</param>
/// <param name="Pattern">The ordinary pixels; null when they were not needed or not kept.</param>
internal sealed record SensorIdentity(SensorMatch Match, AlignmentVotes Votes, PatternCorrelation? Pattern)
{
    // warming up heals most hot pixels of a sensor, never all: below one in ten it is not the same one
    private const double MinSurvivors = 0.1;

    // a sensor that was warmed up and whose frames were turned as well is a rare one
    private const double MinSurvivorsTurned = 0.25;

    // glow or rows that two sensors share leave a little in common: the pattern of one sensor agrees better than this
    private const double MinOfExpected = 0.25;

    private static readonly double Limit = Probability.NormalQuantile(1 - HotPixelVotes.Chance);

    /// <summary>Compares a later session with an earlier one.</summary>
    /// <param name="earlier">Hot pixels of the earlier session.</param>
    /// <param name="later">Those of the later one.</param>
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

    /// <summary>The evidence: "3 of 412 hot pixels in common, chance gives 1.2".</summary>
    public string Evidence
    {
        get
        {
            string hot =
                $"{Plain.Whole(Votes.Votes)} of {Plain.Whole(Votes.Pixels)} hot pixels in common where chance gives "
                + Plain.Number(Votes.Expected, 2);
            return Pattern is null
                ? hot
                : $"{hot}; the pattern of its ordinary pixels agrees to {Plain.Number(Math.Max(0, Pattern.Excess), 2)} "
                    + $"where one sensor would give {Plain.Number(Pattern.Expected, 2)}";
        }
    }
}
