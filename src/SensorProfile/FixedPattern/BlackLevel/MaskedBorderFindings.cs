using SensorProfile.Profiles.Darks;
using static System.FormattableString;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Findings where the masked border contradicts the active pixels.</summary>
internal static class MaskedBorderFindings
{
    private const double Sigmas = 4;
    private const double NotableLevel = 0.5; // ADU: rounding a black level to whole codes leaves this much anyway
    private const double NotableShift = 0.1; // ADU: visible in a stack of 100 frames with 1 ADU noise
    private const double Held = 0.5; // of the rise that the dark charge must cause

    /// <summary>The finding for a border that contains something other than dark pixels.</summary>
    public static IEnumerable<Finding> Unusable() =>
        [
            new(
                FindingCodes.MaskedBorderUnusable,
                Severity.Note,
                "The border beside the pixels that see light holds fewer than 8 rows or columns that stay dark and "
                    + "level, so the black level rests on the bias frames alone.",
                []
            ),
        ];

    /// <summary>All findings about a masked border.</summary>
    public static IEnumerable<Finding> Judge(MaskedBorderProfile border)
    {
        if (border.Difference is { } apart && Stands(apart, NotableLevel))
            yield return new(
                FindingCodes.MaskedBorderDiffers,
                Severity.Note,
                Invariant($"Without exposure the masked border lies {Math.Abs(apart.Value):0.##} ADU ")
                    + Invariant($"(± {apart.StandardUncertainty:0.##}) {(apart.Value > 0 ? "below" : "above")} the ")
                    + "pixels that see light: a black level taken from the border is off by that much; subtract bias "
                    + "frames or darks instead.",
                []
            );
        MaskedBorderSet[] moved = [.. border.Sets.Where(s => s.Shift is { } shift && Stands(shift, NotableShift))];
        if (moved.Length == 0)
            yield break;
        MaskedBorderSet worst = moved.MaxBy(s => Math.Abs(s.Shift!.Value))!;
        yield return IsPinned(border, moved) ? Pinned(worst) : Drift(worst, moved.Length, border);
    }

    // all sets together, because one alone may rise by chance
    private static bool IsPinned(MaskedBorderProfile border, MaskedBorderSet[] moved)
    {
        MaskedBorderSet[] telling = [.. border.Sets.Where(s => s.Charge is { } c && Stands(c, NotableShift))];
        double charge = telling.Sum(s => s.Charge!.Value),
            rise = charge + telling.Sum(s => s.Shift!.Value);
        return moved.Any(telling.Contains) && rise < Held * charge;
    }

    private static Finding Pinned(MaskedBorderSet worst) =>
        new(
            FindingCodes.MaskedBorderClamped,
            Severity.Warning,
            "The camera pins the level of its masked border: "
                + Invariant($"at {worst.Exposure:0.###} s{At(worst)} the noise of the masked pixels shows dark charge ")
                + Invariant($"worth {worst.Charge!.Value:0.##} ADU (± {worst.Charge.StandardUncertainty:0.##}), but ")
                + Invariant($"their level rose by {worst.Charge.Value + worst.Shift!.Value:0.##} ADU. The dark signal ")
                + "is subtracted before the frame is stored, so dark current must be read from the noise, not from the "
                + "level.",
            []
        );

    private static Finding Drift(MaskedBorderSet worst, int sets, MaskedBorderProfile border) =>
        new(
            FindingCodes.MaskedBorderMoves,
            Severity.Warning,
            Invariant($"In {sets} of {border.Sets.Count(s => s.Shift is not null)} sets of darks the masked border ")
                + "moved by more than its own dark charge explains, most of all "
                + Invariant($"at {worst.Exposure:0.###} s{At(worst)}, by {worst.Shift!.Value:+0.##;−0.##} ADU ")
                + Invariant(
                    $"(± {worst.Shift.StandardUncertainty:0.##}). A dark current from the level is off by that much: "
                )
                + "take bias frames between the darks, and trust the dark current from the noise.",
            []
        );

    private static string At(MaskedBorderSet set) =>
        set.Temperature is { } celsius ? $" and {QuantityText.ShortTenths(celsius)} °C" : "";

    private static bool Stands(Measurement m, double least) =>
        Math.Abs(m.Value) > Math.Max(Sigmas * m.StandardUncertainty, least);
}
