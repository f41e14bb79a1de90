using SensorProfile.Drift.Patches;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Judges one master against its fresh darks.</summary>
internal static class MasterCheck
{
    public static MasterVerdict Check(
        MasterDark master,
        FreshDarks fresh,
        FreshDarks? bias,
        StackRuler ruler,
        CameraProfile? profile
    )
    {
        MasterScale scale = MasterScale.Find(
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
            && RobustSpread.Measure(with) < RobustSpread.Measure(residual)
        )
            // its bias pattern is still there: only a constant was added
            (off, residual, scale) = (false, with, scale.WithOffset());
        double stack = ruler.StackNoise(fresh.TemporalVariance, fresh.Set.ExposureSeconds),
            visible = ruler.Options.Limits.HotFactor * stack;
        MasterResidual left = MasterResidual.Measure(
            fresh,
            residual,
            i => master.Values[i] > scale.HotLimit,
            off && bias is not null ? Math.Pow(RobustSpread.Measure(bias.HalfDifference), 2) : 0,
            master.Width,
            visible,
            ruler.OwnNoise(fresh),
            ruler.Dithered(fresh)
        );
        if (left.SharesNoise)
            return new MasterVerdict(new MasterReason(MasterGround.SameFrames))
            {
                File = master.File,
                Verdict = CheckVerdict.CannotTell,
                Scale = scale.Words,
                Exposure = master.Exposure,
                Settings = master.Settings,
                Temperature = master.Temperature,
                FreshFrames = fresh.Frames,
            };
        ResidualPart[] parts = [.. ResidualParts.Split(left, stack, OwnVariance(master, fresh), ruler)];
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
        HeaderContradiction? mismatch = MasterMismatch.Find(ruler, master, scale, profile);
        IReadOnlyList<GrowingPatch> patches =
            mismatch is null && parts.Any(p => p.Kind == ResidualKind.NewHot && p.Verdict == CheckVerdict.Retake)
                ? Patches(residual, left.VisibleLimit, i => master.Values[i] > scale.HotLimit, master)
                : [];
        double extraError =
            extra > 0
                ? Math.Min(left.ExtraUncertainty / (2 * extra), Math.Sqrt(left.ExtraUncertainty))
                : Math.Sqrt(left.ExtraUncertainty);
        var reason = new MasterReason(MasterGround.Residual)
        {
            BiasPatternStays = patternStays,
            Contradiction = mismatch,
            OwnNoise = OwnNoise(master, fresh, left),
            FramesAlike = fresh.TemporalVariance / left.ExtraVariance,
        };
        return new MasterVerdict(reason)
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
                $"{Plain.Whole(ruler.Options.Lights)} lights, noise of the fresh "
                    + $"darks{(ruler.Gain is null ? "" : " and sky")}"
            ),
            Parts = parts,
            Patches = patches,
            SignalRatio = scale.Ratio,
            Scale = scale.Words,
            Exposure = master.Exposure,
            Settings = master.Settings,
            Temperature = master.Temperature,
            FreshFrames = fresh.Frames,
        };
    }

    /// <summary>
    /// Places where pixels that are hot now but not in the master lie closer together than chance allows.
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
            // a pixel without a value in the master tells nothing
            if (!float.IsFinite(residual[i]))
                residual[i] = median;
        return residual;
    }

    /// <summary>
    /// Share of the extra variance due to the master's own noise, if its header states how many frames it holds.
    /// </summary>
    private static double? OwnNoise(MasterDark master, FreshDarks fresh, MasterResidual left) =>
        OwnVariance(master, fresh) is double own && left.ExtraVariance > 0
            ? Math.Min(1, own / left.ExtraVariance)
            : null;

    /// <summary>
    /// Variance of the master's own noise, ADU²; null when its header does not state how many frames it holds.
    /// </summary>
    private static double? OwnVariance(MasterDark master, FreshDarks fresh) => fresh.TemporalVariance / master.Frames;
}
