using SensorProfile.Drift.MasterDarks;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>Why a master is kept or retaken, in words.</summary>
internal static class MasterWords
{
    public static string Reason(DarkLibraryAnswer answer, MasterVerdict master)
    {
        string reason = Ground(answer, master);
        return master switch
        {
            { Realigned: null } => reason,
            { OtherSize: true } => $"It is {master.Realigned}; judged on what both share: {reason}",
            _ => $"It is {master.Realigned}; judged after realigning it: {reason}",
        };
    }

    /// <summary>Warnings about a master.</summary>
    public static IEnumerable<Finding> Findings(MasterVerdict master)
    {
        if (master.Reason.Contradiction is { } contradiction)
            yield return new Finding(
                FindingCodes.MasterNotAsStated,
                Severity.Warning,
                $"{master.File} is not what its header says ({Conditions(master.Exposure, master.Temperature)}): "
                    + $"{Contradicts(contradiction)} (the fresh darks hold "
                    + $"{QuantityText.Number(contradiction.SignalRatio, 3)} times its signal).",
                [master.File]
            );
        if (master.Reason.Common is { } common)
            yield return new Finding(
                FindingCodes.AnotherSensor,
                Severity.Warning,
                $"{master.File} does not fit. {OtherSensor(common)}",
                [master.File]
            );
        if (master.Realigned is { } how)
            yield return new Finding(
                FindingCodes.MasterTurned,
                Severity.Warning,
                master.OtherSize
                    ? $"{master.File} is {how}: it was judged on the part and the binning that both share, and serves "
                        + "lights of its own size only."
                    : $"{master.File} is {how}: it was judged after realigning it. Realign it before you use it, "
                        + "or write lights and darks with the same program and settings.",
                [master.File]
            );
    }

    /// <summary>"300 s, −10 °C".</summary>
    public static string Conditions(double? exposure, double? temperature) =>
        $"{(exposure is double s ? Plain.Seconds(s) : "exposure unknown")}, "
        + $"{(temperature is double c ? Plain.Celsius(c) : "temperature unknown")}";

    /// <summary>"a stack of 40 lights, dithered over 20 positions and clipped".</summary>
    public static string Stack(DarkLibraryOptions stack) =>
        (stack.Lights == 1 ? "a single light" : $"a stack of {Plain.Whole(stack.Lights)} lights")
        + (
            stack.Positions < 2
                ? ""
                : $", dithered over {Plain.Whole(stack.Positions)} positions"
                    + stack.Rejection switch
                    {
                        Rejection.SigmaClip => " and clipped",
                        Rejection.Winsorised => " and winsorised",
                        Rejection.Median => ", their median",
                        _ => "",
                    }
        );

    private static string Ground(DarkLibraryAnswer answer, MasterVerdict master)
    {
        MasterReason why = master.Reason;
        return why.Ground switch
        {
            MasterGround.Residual => Residual(answer, master),
            MasterGround.OtherSensor => OtherSensor(why.Common!),
            MasterGround.Unreadable => $"It cannot be read: {why.Problem}",
            _ => $"Cannot tell: {Lacking(why)}.",
        };
    }

    private static string Lacking(MasterReason why) =>
        why.Ground switch
        {
            MasterGround.NoFreshDarks =>
                "there is no set of two or more fresh darks; take at least 4 like those of the master",
            MasterGround.FewReadable => "fewer than two fresh darks could be read; take at least 4, better 8",
            MasterGround.NoNoise =>
                "the fresh darks do not scatter at all, like copies of one frame or frames of a single code; take raw ones",
            MasterGround.SameFrames =>
                "it was made from these very darks, which match it whatever its age; take a few new ones",
            MasterGround.OtherSize => Sizes(why),
            MasterGround.OtherSizeUnexplained => Sizes(why) + ", and its hot pixels do not say how",
            MasterGround.OtherCamera => $"the profile is of a camera of {Size(why.Others[0])}",
            MasterGround.OtherSettings =>
                $"the fresh darks were taken at {ModeChoice.Name(why.Others[0].Settings!)}, the master at "
                    + ModeChoice.Name(why.Master!.Settings!),
            _ =>
                $"no fresh darks like it ({Conditions(why.Master!.Exposure, why.Master.Temperature)}): those given are "
                    + string.Join("; ", why.Others.Select(o => Conditions(o.Exposure, o.Temperature))),
        };

    private static string Sizes(MasterReason why) =>
        $"the master is {Size(why.Master!)} and the fresh darks are {Size(why.Others[0])}; binning or cropping differs";

    private static string Size(DarkConditions of) => $"{Plain.Whole(of.Width)} × {Plain.Whole(of.Height)} px";

    private static string OtherSensor(CommonHotPixels common) =>
        $"Its hot pixels are not those of the fresh darks ({Plain.Whole(common.Votes)} of {Plain.Whole(common.Pixels)} hot "
        + $"pixels are in common where chance gives {Plain.Number(common.Expected, 2)}): it comes from another sensor, or its "
        + "frames were registered or scaled before they were combined.";

    private static string Contradicts(HeaderContradiction of)
    {
        string warmer = of.Colder is double colder
            ? $" or a sensor {Plain.Celsius(Math.Abs(colder))} {(of.SignalRatio > 1 ? "colder" : "warmer")}"
            : "";
        string exposure = of.Exposure is double t
            ? $"an exposure of {Plain.Seconds(t)}"
            : $"{Plain.Number(1 / of.SignalRatio)} times the exposure";
        string electrons = of.MaybeElectrons ? "; or its values are electrons, which its header does not say" : "";
        return $"its hot pixels hold {QuantityText.Number(1 / of.SignalRatio, 3)} times the signal of the fresh darks, "
            + $"as {exposure}{warmer} would give{electrons}";
    }

    private static string Residual(DarkLibraryAnswer answer, MasterVerdict master)
    {
        MasterReason why = master.Reason;
        string stack = Stack(answer.Stack);
        string? mismatch = why.Contradiction is { } contradiction ? Contradicts(contradiction) : null;
        string also = mismatch is null ? "" : $"; {mismatch}";
        double loss = master.Loss!.Value / 100;
        if (master.Verdict == CheckVerdict.Keep)
            return $"It adds {Plain.Percent(loss)} to the noise of {stack}{Allowed(answer, loss)}, and hot pixels, glow and "
                + $"lines stay within their limits{also}.";
        ResidualPart[] open = [.. master.Parts.Where(p => p.Verdict == CheckVerdict.CannotTell)],
            failed = [.. master.Parts.Where(p => p.Verdict == CheckVerdict.Retake)];
        if (master.Verdict == CheckVerdict.CannotTell)
            return (
                    why.BiasPatternStays
                        ? "Cannot tell: its bias is already subtracted, and without fresh bias frames the bias pattern looks like a "
                            + "residual; add a few bias frames"
                        : $"Cannot tell: there are too few fresh darks to judge {string.Join(" and ", open.Select(p => Words(p.Kind)))}; "
                            + "take about four times as many"
                )
                + also
                + ".";
        string noisy =
            why.OwnNoise > 0.5 && failed.Any(p => p.Kind == ResidualKind.Typical)
                ? "; most of that is the master's own noise: it holds too few frames"
            : why.OwnNoise is null
            && why.FramesAlike is > 0.75 and < 500
            && failed.Any(p => p.Kind == ResidualKind.Typical)
                ? " (as much as the noise of "
                    + (
                        why.FramesAlike < 1.5
                            ? "a single dark"
                            : $"a master of {Plain.Number(Math.Round(why.FramesAlike))} darks"
                    )
                    + ")"
            : "";
        string patch =
            master.Patches.Count > 0
                ? $", {Plain.Whole(master.Patches[0].NewPixels)} of them in a patch {master.Patches[0].Where}"
                : "";
        string what = string.Join(
            "; ",
            failed.Select(p =>
                Failed(answer, p, loss, stack)
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

    /// <summary>Why a master is kept although it costs more than was accepted.</summary>
    private static string Allowed(DarkLibraryAnswer answer, double loss) =>
        loss <= answer.Stack.Limits.NoiseLoss
            ? ""
            : $" (accepted: {Plain.Percent(answer.Stack.Limits.NoiseLoss)}; new darks would gain next to nothing)";

    private static string Failed(DarkLibraryAnswer answer, ResidualPart part, double loss, string stack) =>
        part.Kind switch
        {
            ResidualKind.Typical =>
                $"the pattern of its ordinary pixels raises the noise of {stack} by {Plain.Percent(loss)} (accepted: "
                    + $"{Plain.Percent(answer.Stack.Limits.NoiseLoss)})",
            ResidualKind.Hot =>
                $"{Plain.Percent(part.Value.Value)} of the pixels are hot in it and leave a visible residual (accepted: "
                    + $"{Plain.Percent(part.Limit)})",
            ResidualKind.NewHot =>
                $"{Plain.Percent(part.Value.Value)} of the pixels are hot now but not in it (accepted: {Plain.Percent(part.Limit)})",
            ResidualKind.Glow =>
                $"the glow leaves {QuantityText.Of(part.Value)} (accepted: {Plain.Number(part.Limit)})",
            _ => $"rows or columns leave {QuantityText.Of(part.Value)} (accepted: {Plain.Number(part.Limit)})",
        };
}
