using SensorProfile.Characterisation;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.RawCheck;

/// <summary>
/// Signs in the darks that the camera processes its frames before it stores them: hot pixels removed, frames averaged.
/// </summary>
/// <remarks>
/// Neighbour correlation and a clipped floor are found in the bias frames (<see cref="BiasRecipe"/>), scaling and
/// missing codes in the flats (<see cref="FlatFindings"/>).
/// </remarks>
internal static class TreatmentFindings
{
    // a pixel this many standard deviations of its frame above its surroundings is bright
    private const double BrightSigmas = 10;
    private const long MinBright = 10;

    // single bright pixels are missing when less than this share stands alone …
    private const double FewAlone = 0.2;
    private const double ManyExpected = 0.8; // … where chance would leave this share alone

    // pixels in a tail: chance leaves only 0.4 of them with a probability of 1e-7
    private const double MinExpected = 60;
    private const double CutTail = 0.4,
        WholeTail = 0.6; // of the pixels that normal noise puts there
    private const double TooQuiet = 0.8; // of the variance of the bias frames

    // standard deviations above the level: a fortieth of all samples lies beyond
    private const double NoiseReach = 2;

    /// <summary>Reports what the darks of a mode show.</summary>
    /// <returns>Whether the camera removes hot pixels from its frames.</returns>
    public static bool Report(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        DarkResult darks,
        StageProgress stages,
        FindingsLog log
    )
    {
        ScreenedSet[] sets =
        [
            .. mode.SetsOf(FrameKind.Dark).Where(s => s.Frames.Count > 1 && s.Set.ExposureSeconds > 0),
        ];
        TooQuietSets(bias, darks, log);
        if (sets.Length == 0)
            return false;
        // One temperature is enough: the warmest shows most hot pixels.
        double? warmest = sets.Max(s => s.Set.TemperatureCelsius);
        ScreenedSet[] judged =
        [
            .. sets.Where(s => s.Set.TemperatureCelsius == warmest).OrderBy(s => s.Set.ExposureSeconds),
        ];
        double least = BrightSigmas * Math.Sqrt(judged.Max(s => s.Frames[0].Channels.Max(c => c.ClippedVariance)));
        ScreenedSet longest = judged[^1];
        var bright = BrightPixels.Find(
            longest.Frames[0].Samples,
            longest.Frames[1].Samples,
            mode.Mosaic,
            [.. longest.Frames[0].Channels.Select(c => c.Median)],
            least,
            stages.Walk
        );
        SuppressionSign[] evidence =
        [
            .. new[]
            {
                NoneAlone(longest, bright),
                TailCut([.. mode.SetsOf(FrameKind.Bias), .. sets]),
            }.OfType<SuppressionSign>(),
            .. SuppressionSigns.Find(mode, bias, flats, darks, stages),
        ];
        if (evidence.Length == 0)
            return false;
        double noise = FlatNoise(flats);
        string gain =
            NoiseReach * noise > evidence.Min(e => e.ReachAdu)
                ? Invariant($" The noise of bright flats, {noise:0} ADU, reaches that far and is cut as well: the ")
                    + "gain, and with it every number in electrons, may be wrong by more than its "
                    + "uncertainty."
                : "";
        log.Add(
            FindingCodes.HotPixelsSuppressed,
            Severity.Warning,
            "The camera removes hot pixels from its frames: "
                + $"{string.Join("; ", evidence.Select(e => e.Words))}. The counts of hot pixels and the defect map "
                + "are too small, the mean dark rate and the hot-pixel curve are not given, and what is removed "
                + "differs from exposure to exposure, so darks cannot be scaled or predicted: look for a setting "
                + $"that gives raw data.{gain}",
            [.. judged.SelectMany(s => s.Frames.Take(2)).Select(f => f.Name)]
        );
        return true;
    }

    /// <summary>A sign when bright pixels come only in groups: single ones were replaced by their neighbours.</summary>
    private static SuppressionSign? NoneAlone(ScreenedSet set, BrightPixels pixels)
    {
        for (int k = 0; k < pixels.Bright.Count; k++)
        {
            double expected = Math.Pow(1 - (double)pixels.Bright[k] / pixels.Pixels, 8);
            if (
                pixels.Bright[k] >= MinBright
                && expected > ManyExpected
                && pixels.Alone[k] < FewAlone * pixels.Bright[k]
            )
                return new(
                    Invariant($"of {pixels.Bright[k]} pixels more than {pixels.ThresholdsAdu[k]:0} ADU ")
                        + Invariant($"above their surroundings at {set.Set.ExposureSeconds:0.###} s, only ")
                        + Invariant($"{pixels.Alone[k]} stand alone, where chance would leave ")
                        + Invariant($"{100 * expected:0} %"),
                    pixels.ThresholdsAdu[k]
                );
        }
        return null;
    }

    /// <summary>
    /// A sign when fewer pixels lie far above the level than noise alone puts there, while those far below are all
    /// present. Sets are judged one by one, because charged-particle hits fill the tail of long darks.
    /// </summary>
    private static SuppressionSign? TailCut(ScreenedSet[] sets)
    {
        foreach (ScreenedSet set in sets)
        {
            DistributionTail tail = set
                .Frames.SelectMany(f => f.Channels)
                .Select(c => c.Tail)
                .Aggregate((sum, next) => sum.Plus(next));
            if (
                tail.AboveExpected >= MinExpected
                && tail.Above < CutTail * tail.AboveExpected
                && tail.Below > WholeTail * tail.BelowExpected
            )
                return new(
                    Invariant($"in {set.Frames.Count} {Kind(set)} ")
                        + Invariant($"only {tail.Above} pixels lie more than {DistributionTail.Sigmas} standard ")
                        + Invariant($"deviations above the level where noise alone puts {tail.AboveExpected:0}, ")
                        + Invariant($"but {tail.Below} lie as far below it"),
                    DistributionTail.Sigmas * Math.Sqrt(set.Frames[0].Channels.Min(c => c.ClippedVariance))
                );
        }
        return null;
    }

    private static string Kind(ScreenedSet set) =>
        set.Set.Kind == FrameKind.Bias ? "bias frames" : Invariant($"darks of {set.Set.ExposureSeconds:0.###} s");

    /// <summary>Largest temporal noise of the flats in the gain fit, ADU.</summary>
    private static double FlatNoise(FlatResult flats) =>
        Math.Sqrt(
            flats
                .Channels.SelectMany(c => c.Points.Where((_, i) => c.Fit?.Used[i] ?? false))
                .Select(p => p.Variance)
                .DefaultIfEmpty(0)
                .Max()
        );

    /// <summary>Reports sets of darks with less noise than a bias frame, which raw darks never have.</summary>
    private static void TooQuietSets(BiasResult bias, DarkResult darks, FindingsLog log)
    {
        Measurement[] unlit =
        [
            .. bias
                .Channels.Where(c => c.Variance is not null)
                .Select(c => new Measurement(c.Variance!.Value, c.Variance.StandardUncertainty, "ADU²", 1, "")),
        ];
        if (unlit.Length == 0 || unlit.Length < bias.Channels.Count)
            return;
        double expected = unlit.Average(v => v.Value),
            doubt = unlit.Max(v => v.StandardUncertainty);
        foreach (DarkTemperature t in darks.Temperatures)
        foreach (DarkLevel level in t.Levels)
        {
            if (
                level.Variance is not { } variance
                || !(variance + 5 * (level.VarianceUncertainty ?? 0) < TooQuiet * (expected - 5 * doubt))
            )
                continue;
            log.Add(
                FindingCodes.AveragedSet,
                Severity.Warning,
                Invariant($"The darks of {level.Exposure:0.###} s at {QuantityText.Temperature(t.TemperatureCelsius)} ")
                    + Invariant(
                        $"scatter by {Math.Sqrt(Math.Max(variance, 0)):0.##} ADU where bias frames alone scatter by "
                    )
                    + Invariant($"{Math.Sqrt(expected):0.##} ADU: they were averaged or smoothed before they ")
                    + (
                        variance > 0
                            ? Invariant($"were stored (as if {expected / variance:0.#} frames were averaged), so the ")
                            : "were stored, so the "
                    )
                    + "dark current taken from their noise is wrong; only raw frames show the true noise.",
                [
                    .. t
                        .Sets.Where(s => s.Set.ExposureSeconds == level.Exposure)
                        .SelectMany(s => s.Frames)
                        .Select(f => f.Name),
                ]
            );
        }
    }
}
