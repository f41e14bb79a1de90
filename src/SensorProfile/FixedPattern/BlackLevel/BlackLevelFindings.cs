using SensorProfile.Profiles.Darks;
using static System.FormattableString;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Findings for the user about the black level.</summary>
internal static class BlackLevelFindings
{
    private const double Sigmas = 4;
    private const double NotableShare = 0.05; // of a dark rate
    private const double NotableScatter = 0.5; // ADU
    private const double NotableStep = 0.1; // ADU: what a stack of 100 frames of 1 ADU noise can show

    /// <summary>All findings about a black-level record.</summary>
    /// <param name="level">The black-level record.</param>
    /// <param name="series">One series for each of the limits in the record, in the same order.</param>
    /// <param name="pinned">Whether the camera pins its level, which has a finding of its own.</param>
    public static IReadOnlyList<Finding> Judge(
        BlackLevelProfile level,
        IReadOnlyList<BlackLevelSeries> series,
        bool pinned
    )
    {
        List<Finding> findings = [];
        if (Drift(level, series, pinned) is { } drift)
            findings.Add(drift);
        if (level.DriftPerDegree is { } degree && Stands(degree) && Math.Abs(degree.Value) > NotableStep / 2)
            findings.Add(
                new(
                    FindingCodes.BlackLevelFollowsTemperature,
                    Severity.Note,
                    Invariant($"The black level changes by {degree.Value:+0.###;−0.###} ADU per °C of ")
                        + Invariant($"sensor temperature (± {degree.StandardUncertainty:0.###}): take bias ")
                        + "frames at the temperature of the darks and lights they are used with.",
                    []
                )
            );
        if (!pinned && level.DriftPerSecond is { } second && Stands(second))
            findings.Add(
                new(
                    FindingCodes.BlackLevelFollowsExposure,
                    Severity.Note,
                    Invariant($"The level changes by {second.Value:+0.#####;−0.#####} ADU per second of ")
                        + Invariant($"exposure (± {second.StandardUncertainty:0.#####}) beyond the dark current ")
                        + "that the noise shows: the black level follows the exposure, so a dark "
                        + "current from the level is off by that much; calibrate lights with darks "
                        + "of the same exposure.",
                    []
                )
            );
        if (level.FirstFrameDifference is { } first && Stands(first) && Math.Abs(first.Value) > NotableStep)
            findings.Add(
                new(
                    FindingCodes.FirstFrameDiffers,
                    Severity.Warning,
                    Invariant($"The first frame after a pause is {Math.Abs(first.Value):0.##} ADU (± ")
                        + Invariant($"{first.StandardUncertainty:0.##}) {(first.Value > 0 ? "above" : "below")} ")
                        + "the frames that follow it: take one extra frame after every pause and "
                        + "leave out the first.",
                    []
                )
            );
        if (level.Jumps.Count > 0)
        {
            BlackLevelJump largest = level.Jumps.MaxBy(j => Math.Abs(j.Step.Value))!;
            findings.Add(
                new(
                    FindingCodes.BlackLevelJumps,
                    Severity.Warning,
                    "The black level jumped "
                        + Invariant($"{(level.Jumps.Count == 1 ? "once" : Invariant($"{level.Jumps.Count} times"))} ")
                        + Invariant($"from one frame to the next, by {(level.Jumps.Count == 1 ? "" : "up to ")}")
                        + Invariant($"{Math.Abs(largest.Step.Value):0.##} ")
                        + "ADU: check these frames before you use them and, if the camera has masked "
                        + "pixels, match every light to darks by their level.",
                    [.. level.Jumps.Select(j => j.Frame)]
                )
            );
        }
        if (
            level.SetScatter is { } sets
            && level.Jitter is { } jitter
            && sets.Value > Math.Max(NotableScatter, jitter.Value)
        )
            findings.Add(
                new(
                    FindingCodes.BlackLevelSetsDiffer,
                    Severity.Note,
                    "From one set of frames to the next, the black level varies by "
                        + Invariant($"{sets.Value:0.##} ADU (standard deviation) beyond what time, temperature ")
                        + "and exposure explain: calibrate lights with darks of the same exposure "
                        + "and night, and trust a dark current from the level no further than that.",
                    []
                )
            );
        if (Below(level, series, pinned) is { } below)
            findings.Add(below);
        return findings;
    }

    private static Finding? Drift(BlackLevelProfile level, IReadOnlyList<BlackLevelSeries> series, bool pinned)
    {
        if (level.DriftPerHour is not { } hour || !Stands(hour))
            return null;
        double hours = level.Points.Max(p => p.Hours ?? 0);
        if (Math.Abs(hour.Value * hours) < NotableStep)
            return null;
        // The error that the drift causes in a dark current that ignores it.
        var worst = pinned
            ? []
            : level
                .Limits.Zip(series, (l, s) => (l.Temperature, Plain: s.Plain?.Value ?? 0, Free: l.Rate))
                .Where(p =>
                    p.Plain > 0
                    && p.Free is not null
                    && Math.Abs(p.Plain - p.Free.Value)
                        > Math.Max(2 * p.Free.StandardUncertainty, NotableShare * p.Plain)
                )
                .Select(p => (p.Temperature, p.Plain, p.Free!.Value))
                .OrderByDescending(p => Math.Abs(p.Plain - p.Value) / p.Plain)
                .ToList();
        string start = Invariant(
            $"The black level drifted by {hour.Value:+0.##;−0.##} ADU per hour (± {hour.StandardUncertainty:0.##}) over {hours:0.#} h"
        );
        return worst.Count == 0
            ? new(
                FindingCodes.BlackLevelDrift,
                Severity.Note,
                start
                    + "; this does not affect the dark currents, but take bias frames close in time to the frames they "
                    + "are used with.",
                []
            )
            : new(
                FindingCodes.BlackLevelDrift,
                Severity.Warning,
                start
                    + ", and a dark current from the level mistakes this for dark signal: at "
                    + Invariant(
                        $"{QuantityText.Temperature(worst[0].Temperature)} it gives {worst[0].Plain:0.####} where "
                    )
                    + Invariant($"{worst[0].Value:0.####} e⁻/px/s remains without the drift; take ")
                    + "exposures in mixed order with bias frames in between.",
                []
            );
    }

    private static Finding? Below(BlackLevelProfile level, IReadOnlyList<BlackLevelSeries> series, bool pinned)
    {
        if (pinned)
            return null;
        var below = level
            .Limits.Zip(series, (l, s) => (Limit: l, s.Expected))
            .Where(p => p.Limit.Smallest is { } smallest && p.Expected is > 0 and { } rate && rate < smallest.Value)
            .ToList();
        if (below.Count == 0)
            return null;
        var coldest = below[0];
        double needed = Rounded(
            coldest.Limit.LongestExposure * coldest.Limit.Smallest!.Value / coldest.Expected!.Value
        );
        return new(
            FindingCodes.DarkBelowBlackLevel,
            Severity.Note,
            "At "
                + $"{string.Join(", ", below.Select(b => QuantityText.Tenths(b.Limit.Temperature)))} "
                + "°C the dark current is too small to show above the movements of the black level "
                + Invariant($"(limit {coldest.Limit.Smallest.Value:0.####} e⁻/px/s at ")
                + Invariant(
                    $"{QuantityText.Temperature(coldest.Limit.Temperature)} with {coldest.Limit.LongestExposure:0.##} s; "
                )
                + Invariant($"{coldest.Expected.Value:0.#####} expected): there it is known only from the ")
                + Invariant($"other temperatures or the noise; exposures of about {needed:0} s would show ")
                + "it.",
            []
        );
    }

    private static double Rounded(double seconds) =>
        seconds < 60 ? Math.Ceiling(seconds / 10) * 10 : Math.Ceiling(seconds / 60) * 60;

    private static bool Stands(Measurement m) => Math.Abs(m.Value) > Sigmas * m.StandardUncertainty;
}
