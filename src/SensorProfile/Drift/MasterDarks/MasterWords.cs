using SensorProfile.Drift.Patches;
using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Why a master is kept or retaken, in words.</summary>
internal static class MasterWords
{
    public static string Reason(
        CheckVerdict verdict,
        ResidualPart[] parts,
        double loss,
        bool patternStays,
        string? mismatch,
        double? ownNoise,
        double framesAlike,
        IReadOnlyList<GrowingPatch> patches,
        StackRuler ruler
    )
    {
        string stack = ruler.Words,
            also = mismatch is null ? "" : $"; {mismatch}";
        if (verdict == CheckVerdict.Keep)
            return $"It adds {Said.Percent(loss)} to the noise of {stack}, and hot pixels, glow and lines stay within "
                + $"their limits{also}.";
        ResidualPart[] open = [.. parts.Where(p => p.Verdict == CheckVerdict.CannotTell)],
            failed = [.. parts.Where(p => p.Verdict == CheckVerdict.Retake)];
        if (verdict == CheckVerdict.CannotTell)
            return (
                    patternStays
                        ? "Cannot tell: its bias is taken off, and without fresh bias frames the bias pattern looks like a "
                            + "residual; add a few bias frames"
                        : $"Cannot tell: for {string.Join(" and ", open.Select(p => Words(p.Kind)))} the fresh darks are "
                            + "too few; take about four times as many"
                )
                + also
                + ".";
        string noisy =
            ownNoise > 0.5 && failed.Any(p => p.Kind == ResidualKind.Typical)
                ? "; most of that is the master's own noise: it holds too few frames"
            : ownNoise is null && framesAlike is > 0.75 and < 500 && failed.Any(p => p.Kind == ResidualKind.Typical)
                ? " (as much as the noise of "
                    + $"{(framesAlike < 1.5 ? "a single dark" : $"a master of {Said.Whole((long)Math.Round(framesAlike))} darks")})"
            : "";
        string patch =
            patches.Count > 0 ? $", {Said.Whole(patches[0].NewPixels)} of them in a patch {patches[0].Where}" : "";
        string what = string.Join(
            "; ",
            failed.Select(p =>
                Failed(p, loss, stack)
                + (
                    p.Kind == ResidualKind.Typical ? noisy
                    : p.Kind == ResidualKind.NewHot ? patch
                    : ""
                )
            )
        );
        return mismatch is null ? what + "." : $"{mismatch}; {what}.";
    }

    private static string Words(ResidualKind kind) =>
        kind switch
        {
            ResidualKind.Typical => "the ordinary pixels",
            ResidualKind.Hot => "the hot pixels",
            ResidualKind.NewHot => "new hot pixels",
            ResidualKind.Glow => "the glow",
            _ => "rows and columns",
        };

    private static string Failed(ResidualPart part, double loss, string stack) =>
        part.Kind switch
        {
            ResidualKind.Typical =>
                $"the pattern of its ordinary pixels raises the noise of {stack} by {Said.Percent(loss)}",
            ResidualKind.Hot =>
                $"{Said.Percent(part.Value.Value)} of the pixels are hot in it and leave a visible residual (accepted: "
                    + $"{Said.Percent(part.Limit)})",
            ResidualKind.NewHot =>
                $"{Said.Percent(part.Value.Value)} of the pixels are hot now and not in it (accepted: {Said.Percent(part.Limit)})",
            ResidualKind.Glow => $"the glow leaves {QuantityText.Of(part.Value)} (accepted: {Said.Number(part.Limit)})",
            _ => $"rows or columns leave {QuantityText.Of(part.Value)} (accepted: {Said.Number(part.Limit)})",
        };
}
