using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Splits the residual of a master by kind and judges each against its limit.</summary>
internal static class ResidualParts
{
    private const double NearEnough = 1.1,
        ReachFactor = 4;

    /// <summary>Every part with its limit and its own verdict.</summary>
    /// <remarks>
    /// Dithering divides by √k whatever differs from pixel to pixel and from line to line; glow is smooth and stays.
    /// The spread of the ordinary pixels may exceed its limit by <see cref="NearEnough"/> in variance: a plan computes
    /// the same loss from the profile, a check measures it on frames, and retaking a library for the difference gains
    /// nothing. A residual that the master's own noise explains, if its header states how many frames it holds, is
    /// judged by that noise, which is known far better.
    /// </remarks>
    public static IEnumerable<ResidualPart> Split(
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
            reach = Probability.OneSided95 * left.ExtraUncertainty;
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
        CheckVerdict hot = Between(
            total - Probability.OneSided95 * error,
            total + Probability.OneSided95 * error,
            limits.HotShare
        );
        // too few fresh darks to resolve what would be visible in the stack
        if (hot == CheckVerdict.Keep && left.VisibleLimit > ReachFactor * visible)
            hot = CheckVerdict.CannotTell;
        bool mostlyNew = left.NewBeyond > left.HotBeyond;
        string beyond =
            ruler.Options.Positions > 1
                ? "share of the places of the stack with a residual beyond "
                    + $"{Plain.Number(limits.HotFactor * stack * ruler.PerAdu)} {ruler.Unit}"
                : $"share of the pixels with a residual beyond {Plain.Number(left.VisibleLimit * ruler.PerAdu)} {ruler.Unit}";
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
            limits.SmoothLimit * stack,
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
            Between(value - Probability.OneSided95 * uncertainty, value + Probability.OneSided95 * uncertainty, limit)
        );

    private static CheckVerdict Between(double low, double high, double limit) =>
        high <= limit ? CheckVerdict.Keep
        : low > limit ? CheckVerdict.Retake
        : CheckVerdict.CannotTell;
}
