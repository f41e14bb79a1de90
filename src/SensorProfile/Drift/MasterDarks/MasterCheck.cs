using SensorProfile.Drift.Patches;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Judges one master against its fresh darks.</summary>
internal static class MasterCheck
{
    private const double OneSided95 = 1.6448536269514722;
    private const double Mismatch = 0.1,
        NearEnough = 1.1,
        ReachFactor = 4,
        ElectronsAlike = 0.15;

    public static MasterVerdict Of(
        MasterDark master,
        FreshDarks fresh,
        FreshDarks? bias,
        StackRuler ruler,
        CameraProfile? profile,
        List<Finding> findings
    )
    {
        MasterScale scale = MasterScale.Of(
            master.Values,
            fresh.Mean,
            ruler.GainIsRough ? null : ruler.Gain?.Value,
            master.SaysElectrons
        );
        bool off = scale.BiasOff,
            patternStays = off && bias is null;
        float[] residual = Residual(master.Values, fresh.Mean, off ? bias?.Mean : null, scale.Scale);
        if (
            off
            && bias is not null
            && Residual(master.Values, fresh.Mean, null, scale.Scale) is var with
            && RobustSpread.Of(with) < RobustSpread.Of(residual)
        )
            // its bias pattern is still there: only a number was added
            (off, residual, scale) = (false, with, scale.WithOffset());
        double stack = ruler.StackNoise(fresh.TemporalVariance, fresh.Set.ExposureSeconds),
            visible = ruler.Options.Limits.HotFactor * stack;
        MasterResidual left = MasterResidual.Of(
            fresh,
            residual,
            i => master.Values[i] > scale.HotLimit,
            off && bias is not null ? Math.Pow(RobustSpread.Of(bias.HalfDifference), 2) : 0,
            master.Width,
            visible,
            ruler.Dithered(fresh)
        );
        ResidualPart[] parts = [.. Parts(left, stack, OwnVariance(master, fresh), ruler)];
        if (patternStays)
            parts =
            [
                .. parts.Select(p =>
                    p is { Verdict: CheckVerdict.Retake, Kind: ResidualKind.Typical or ResidualKind.Structure }
                        ? p with
                        {
                            Verdict = CheckVerdict.CannotTell,
                        }
                        : p
                ),
            ];
        double extra = Math.Sqrt(Math.Max(0, left.ExtraVariance)),
            loss = ruler.Loss(left.ExtraVariance, stack);
        CheckVerdict verdict =
            parts.Any(p => p.Verdict == CheckVerdict.Retake) ? CheckVerdict.Retake
            : parts.Any(p => p.Verdict == CheckVerdict.CannotTell) ? CheckVerdict.CannotTell
            : CheckVerdict.Keep;
        string? mismatch = MismatchOf(ruler, master, scale, profile, findings);
        IReadOnlyList<GrowingPatch> patches =
            mismatch is null && parts.Any(p => p.Kind == ResidualKind.NewHot && p.Verdict == CheckVerdict.Retake)
                ? Patches(residual, left.VisibleLimit, i => master.Values[i] > scale.HotLimit, master)
                : [];
        double extraError =
            extra > 0
                ? Math.Min(left.ExtraUncertainty / (2 * extra), Math.Sqrt(left.ExtraUncertainty))
                : Math.Sqrt(left.ExtraUncertainty);
        return new MasterVerdict
        {
            File = master.File,
            Verdict = verdict,
            Residual = ruler.Measured(
                extra,
                extraError,
                left.Pixels,
                "spread of fresh mean less master over ordinary pixels, noise of the fresh mean taken out"
            ),
            Loss = new Measurement(
                100 * loss,
                100 * (ruler.Loss(left.ExtraVariance + left.ExtraUncertainty, stack) - loss),
                "%",
                left.Pixels,
                "rise of the stack's noise"
            ),
            StackNoise = ruler.Measured(
                stack,
                0,
                fresh.Frames,
                $"{Said.Whole(ruler.Options.Lights)} lights, noise of the fresh "
                    + $"darks{(ruler.Gain is null ? "" : " and sky")}"
            ),
            Parts = parts,
            Patches = patches,
            SignalRatio = scale.Ratio,
            Scale = scale.Words,
            Exposure = master.Exposure,
            Temperature = master.Temperature,
            FreshFrames = fresh.Frames,
            Reason = Reason(
                verdict,
                parts,
                loss,
                patternStays,
                mismatch,
                OwnNoise(master, fresh, left),
                fresh.TemporalVariance / left.ExtraVariance,
                patches,
                ruler
            ),
        };
    }

    /// <summary>
    /// Places where pixels that are hot now and not in the master stand closer together than chance allows.
    /// </summary>
    private static IReadOnlyList<GrowingPatch> Patches(
        float[] residual,
        double limit,
        Func<int, bool> isHot,
        MasterDark master
    )
    {
        List<OutlinePoint> born = [];
        for (int i = 0; i < residual.Length; i++)
            if (residual[i] > limit && !isHot(i))
                born.Add(new OutlinePoint(i % master.Width + 1, i / master.Width + 1));
        return PatchScan.Find(born, master.Width, master.Height, layouts: 199, seed: 1);
    }

    private static float[] Residual(float[] master, float[] fresh, float[]? bias, double scale)
    {
        var residual = new float[fresh.Length];
        for (int i = 0; i < residual.Length; i++)
            residual[i] = (float)(fresh[i] - scale * master[i] - (bias is null ? 0 : bias[i]));
        float median = (float)RobustSpread.Median(residual);
        for (int i = 0; i < residual.Length; i++)
            // a pixel without a value in the master says nothing
            if (!float.IsFinite(residual[i]))
                residual[i] = median;
        return residual;
    }

    /// <remarks>
    /// Dithering divides by √k what differs from pixel to pixel and from line to line; the glow is smooth and stays.
    /// The
    /// spread of the ordinary pixels may exceed its limit by <see cref="NearEnough"/> in variance: a plan works out the
    /// same loss from the profile, a check from frames, and no one gains by retaking a library for the difference. A
    /// residual that the master's own noise explains, where its header says how many frames it holds, is judged by that
    /// noise, which is known far better.
    /// </remarks>
    private static IEnumerable<ResidualPart> Parts(
        MasterResidual left,
        double stack,
        double? ownVariance,
        StackRuler ruler
    )
    {
        LossLimits limits = ruler.Options.Limits;
        double dithered = Math.Sqrt(ruler.Options.Positions),
            visible = (ruler.Options.Positions > 1 ? ruler.Options.Positions : 1) * limits.HotFactor * stack,
            allowed = Math.Pow(limits.SpreadFactor * stack * dithered, 2),
            extra = Math.Sqrt(Math.Max(0, left.ExtraVariance)),
            reach = OneSided95 * left.ExtraUncertainty;
        yield return new ResidualPart(
            ResidualKind.Typical,
            ruler.Measured(
                extra,
                left.ExtraUncertainty / (2 * Math.Max(extra, Math.Sqrt(left.ExtraUncertainty))),
                left.Pixels,
                "spread over ordinary pixels"
            ),
            Math.Sqrt(allowed) * ruler.PerAdu,
            ownVariance <= NearEnough * allowed && left.ExtraVariance - ownVariance <= reach
                ? CheckVerdict.Keep
                : Between(left.ExtraVariance - reach, left.ExtraVariance + reach, NearEnough * allowed)
        );
        double total = (left.HotBeyond + left.NewBeyond) / left.Pixels,
            error = left.BeyondUncertainty / left.Pixels;
        CheckVerdict hot = Between(total - OneSided95 * error, total + OneSided95 * error, limits.HotShare);
        // the fresh darks are too few to show what would be seen in the stack
        if (hot == CheckVerdict.Keep && left.VisibleLimit > ReachFactor * visible)
            hot = CheckVerdict.CannotTell;
        bool mostlyNew = left.NewBeyond > left.HotBeyond;
        string beyond =
            ruler.Options.Positions > 1
                ? "share of the places of the stack with a residual beyond "
                    + $"{Said.Number(limits.HotFactor * stack * ruler.PerAdu)} {ruler.Unit}"
                : $"share of the pixels with a residual beyond {Said.Number(left.VisibleLimit * ruler.PerAdu)} {ruler.Unit}";
        yield return new ResidualPart(
            ResidualKind.Hot,
            new Measurement(left.HotBeyond / left.Pixels, error, "1", left.Pixels, beyond + ", hot in the master"),
            limits.HotShare,
            hot == CheckVerdict.Retake && mostlyNew ? CheckVerdict.Keep : hot
        );
        yield return new ResidualPart(
            ResidualKind.NewHot,
            new Measurement(left.NewBeyond / left.Pixels, error, "1", left.Pixels, beyond + ", not hot in the master"),
            limits.HotShare,
            hot == CheckVerdict.Retake && !mostlyNew ? CheckVerdict.Keep : hot
        );
        yield return Seen(
            ResidualKind.Glow,
            left.Glow,
            left.GlowUncertainty,
            limits.GlowFactor * stack,
            "largest smooth residual over blocks of 32 × 32 px",
            left.Pixels,
            ruler
        );
        yield return Seen(
            ResidualKind.Structure,
            left.Structure,
            left.StructureUncertainty,
            ruler.Options.StructureFactor * stack * dithered,
            "spread of the residual over rows or columns",
            left.Pixels,
            ruler
        );
    }

    private static ResidualPart Seen(
        ResidualKind kind,
        double value,
        double uncertainty,
        double limit,
        string method,
        long pixels,
        StackRuler ruler
    ) =>
        new(
            kind,
            ruler.Measured(value, uncertainty, pixels, method),
            limit * ruler.PerAdu,
            Between(value - OneSided95 * uncertainty, value + OneSided95 * uncertainty, limit)
        );

    private static CheckVerdict Between(double low, double high, double limit) =>
        high <= limit ? CheckVerdict.Keep
        : low > limit ? CheckVerdict.Retake
        : CheckVerdict.CannotTell;

    /// <summary>
    /// Share of the extra variance that is the master's own noise, where its header says how many frames it holds.
    /// </summary>
    private static double? OwnNoise(MasterDark master, FreshDarks fresh, MasterResidual left) =>
        OwnVariance(master, fresh) is double own && left.ExtraVariance > 0
            ? Math.Min(1, own / left.ExtraVariance)
            : null;

    /// <summary>
    /// Variance of the master's own noise, ADU²; null where its header does not say how many frames it holds.
    /// </summary>
    private static double? OwnVariance(MasterDark master, FreshDarks fresh) => fresh.TemporalVariance / master.Frames;

    private static string? MismatchOf(
        StackRuler ruler,
        MasterDark master,
        MasterScale scale,
        CameraProfile? profile,
        List<Finding> findings
    )
    {
        if (
            scale.Ratio is not { } ratio
            || Math.Abs(ratio.Value - 1) <= Math.Max(Mismatch, 4 * ratio.StandardUncertainty)
        )
            return null;
        string factor = QuantityText.Number(ratio.Value, 3);
        double? doubling = profile?.Modes.Select(HotDoubling).FirstOrDefault(d => d is > 0);
        string warmer = doubling is double d
            ? $" or a sensor {Said.Celsius(Math.Abs(d * Math.Log2(ratio.Value)))} {(ratio.Value > 1 ? "colder" : "warmer")}"
            : "";
        string exposure = master.Exposure is double t
            ? $"an exposure of {Said.Seconds(t / ratio.Value)}"
            : $"{Said.Number(1 / ratio.Value)} times the exposure";
        string electrons =
            !master.SaysElectrons
            && ruler.Gain is { } k
            && Math.Abs(Math.Log(ratio.Value * scale.Scale * k.Value)) < ElectronsAlike
                ? "; or its values are electrons, which its header does not say"
                : "";
        string sentence =
            $"its hot pixels hold {QuantityText.Number(1 / ratio.Value, 3)} times the signal of the fresh darks, "
            + $"as {exposure}{warmer} would give{electrons}";
        findings.Add(
            new Finding(
                "master-not-as-stated",
                Severity.Warning,
                $"{master.File} is not what its header says "
                    + $"({FreshChoice.Conditions(master.Exposure, master.Temperature)}): {sentence} (the fresh darks "
                    + $"hold {factor} times its signal).",
                [master.File]
            )
        );
        return sentence;
    }

    /// <summary>
    /// Doubling temperature of the hot pixels, whose signal is compared; of the typical pixel when theirs is not known.
    /// </summary>
    private static double? HotDoubling(ModeProfile mode) =>
        mode.FixedPattern?.DoublingByRate.Where(c => c.RateFrom >= (mode.FixedPattern.Thresholds?.HotRate ?? 0))
            .MaxBy(c => c.Pixels)
            ?.Doubling.Value
        ?? mode.DarkCurrent?.DoublingTemperature?.Value;

    private static string Reason(
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
