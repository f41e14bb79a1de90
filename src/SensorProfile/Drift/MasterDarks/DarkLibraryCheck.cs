using SensorProfile.Decisions.DarkCount;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Is my dark library still good? Old master darks against a few fresh dark frames.</summary>
/// <remarks>
/// The master, brought to ADU and to the fresh darks' level, is subtracted from their mean. What is left beyond the
/// noise of the fresh darks is what every calibrated light
/// would carry, the master's own noise included; it is judged against the noise of the stack that the master serves, by
/// the same limits as the dark matching. Age is no criterion.
/// </remarks>
public static class DarkLibraryCheck
{
    /// <summary>Checks masters.</summary>
    /// <param name="masterPaths">Master darks, FITS, made by any program.</param>
    /// <param name="fresh">Inventory of the fresh frames: darks like those of the masters, two or more of each; a few
    /// bias frames help where a master has its bias taken off.</param>
    /// <param name="profile">For the gain, so that residuals are in electrons and the sky counts; null works in
    /// ADU.</param>
    /// <param name="options">The stack, the limits.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DarkLibraryAnswer Run(
        IReadOnlyList<string> masterPaths,
        Inventory fresh,
        CameraProfile? profile = null,
        DarkLibraryOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(masterPaths);
        ArgumentNullException.ThrowIfNull(fresh);
        options ??= new DarkLibraryOptions();
        options.Limits.Check();
        Guard.Conditions(options.At(0, NamedSkies.OrDefault(options.Sky)));
        IReadOnlyList<FrameSet> joined = SetPoints.Join(fresh.Sets);
        List<Finding> findings =
        [
            .. SetPoints.StillTrue(fresh.Findings.Where(f => f.Severity != Severity.Note), joined),
            .. options.Notes(),
            .. SetPoints.NotHeld(fresh.Sets),
        ];
        fresh = fresh with { Sets = joined };
        if (masterPaths.Count == 0)
            throw Refuse.BadArgument("no-master", "Give at least one master dark to check.");
        Measurement? gain = profile is null ? null : ChannelMean.Of(ModeChoice.Find(profile, options.Mode)).Gain;
        var ruler = new StackRuler(gain, options);
        var cache = new Dictionary<FrameSet, FreshDarks?>();
        List<MasterVerdict> verdicts = [];
        foreach (string path in masterPaths)
        {
            cancellation.ThrowIfCancellationRequested();
            verdicts.Add(CheckOne(path, fresh, profile, ref ruler, cache, findings, cancellation));
        }
        if (gain is null)
            findings.Add(GainFinding(ruler.Gain));
        if (options.Sky is null && ruler.Gain is not null)
            findings.Add(DarkCountAdvice.SkyAssumed(NamedSkies.Default));
        DarkLibraryAnswer answer = DarkLibraryWords.Of(
            verdicts,
            ruler,
            [.. cache.Values.OfType<FreshDarks>().Where(f => f.Set.Kind != FrameKind.Bias)],
            findings
        );
        return answer with { Sentence = answer.Sentence + BringBack(verdicts) };
    }

    /// <summary>A master that is turned does harm as it is, even one that is good.</summary>
    private static string BringBack(List<MasterVerdict> verdicts)
    {
        MasterVerdict[] turned = [.. verdicts.Where(v => v.Realigned is not null && v.Verdict == CheckVerdict.Keep)];
        return turned.Length switch
        {
            0 => "",
            1 when turned[0].OtherSize =>
                $" {Path.GetFileName(turned[0].File)} is {turned[0].Realigned}: it serves lights of its own size only.",
            1 => $" Bring {Path.GetFileName(turned[0].File)} back before you use it: it is {turned[0].Realigned}.",
            _ =>
                $" {Said.Whole(turned.Length)} of them are turned, shifted, cropped or binned against the fresh darks: "
                    + "bring them back before you use them.",
        };
    }

    private static MasterVerdict CheckOne(
        string path,
        Inventory fresh,
        CameraProfile? profile,
        ref StackRuler ruler,
        Dictionary<FrameSet, FreshDarks?> cache,
        List<Finding> findings,
        CancellationToken cancellation
    )
    {
        try
        {
            MasterDark master = MasterDark.Read(path);
            (FrameSet? set, string? why) = FreshChoice.Of(master, fresh, profile, ruler.Options);
            if (set is null)
                return CannotTell(master, why!);
            if (!cache.TryGetValue(set, out FreshDarks? darks))
                cache[set] = darks = FreshDarks.Of(set, findings, cancellation);
            if (darks is null)
                return CannotTell(master, "fewer than two fresh darks could be read; take at least 4, better 8");
            if (ruler.Gain is null && FreshGain.Of(darks) is { } rough)
                ruler = ruler with { Gain = rough, GainIsRough = true };
            FreshDarks? bias = Bias(fresh, set, cache, findings, cancellation);
            if (Realignment.Find(master, darks, bias) is not { } aligned)
                return CannotTell(master, FreshChoice.SizesDiffer(master, set) + ", and its hot pixels do not say how");
            if (aligned.Foreign is { } evidence)
                return Foreign(master, evidence, findings);
            MasterVerdict verdict = MasterCheck.Of(
                aligned.Master,
                aligned.Fresh,
                aligned.Bias,
                ruler,
                profile,
                findings
            );
            return aligned.Words is null ? verdict : Turned(verdict, aligned, findings);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            findings.Add(
                new Finding("master-unreadable", Severity.Warning, $"{path} was left out: {problem.Message}", [path])
            );
            return new MasterVerdict
            {
                File = path,
                Verdict = CheckVerdict.CannotTell,
                Reason = $"It cannot be read: {problem.Message}",
            };
        }
    }

    private static MasterVerdict Foreign(MasterDark master, string evidence, List<Finding> findings)
    {
        string reason =
            $"Its hot pixels are not those of the fresh darks ({evidence}): it is of another sensor, or its frames were "
            + "registered or scaled before they were combined.";
        findings.Add(
            new Finding("another-sensor", Severity.Warning, $"{master.File} does not fit. {reason}", [master.File])
        );
        return new MasterVerdict
        {
            File = master.File,
            Verdict = CheckVerdict.Retake,
            Exposure = master.Exposure,
            Settings = master.Settings,
            Temperature = master.Temperature,
            Reason = reason,
        };
    }

    private static MasterVerdict Turned(MasterVerdict verdict, Realignment aligned, List<Finding> findings)
    {
        string how = aligned.Words!;
        findings.Add(
            new Finding(
                "master-turned",
                Severity.Warning,
                aligned.OtherSize
                    ? $"{verdict.File} is {how}: it was judged on the part and the binning that both have, and serves "
                        + "lights of its own size only."
                    : $"{verdict.File} is {how}: it was judged after bringing it back. Bring it back before you use it, "
                        + "or write lights and darks with the same program and settings.",
                [verdict.File]
            )
        );
        return verdict with
        {
            Realigned = how,
            OtherSize = aligned.OtherSize,
            Reason = aligned.OtherSize
                ? $"It is {how}; judged on what both have: {verdict.Reason}"
                : $"It is {how}; judged after bringing it back: {verdict.Reason}",
        };
    }

    private static Finding GainFinding(Measurement? rough) =>
        rough is null
            ? new Finding(
                "gain-unknown",
                Severity.Note,
                "Without a gain (no profile given, or none in it) residuals are in ADU and the sky's noise is not "
                    + "counted, which makes the check stricter. Give the camera's profile."
            )
            : new Finding(
                "gain-from-hot-pixels",
                Severity.Note,
                $"No profile gave a gain: {QuantityText.Of(rough)} was taken from the shot noise of the hot pixels in "
                    + "the fresh darks, good enough to count the sky. Give the camera's profile for a better one."
            );

    private static MasterVerdict CannotTell(MasterDark master, string why) =>
        new()
        {
            File = master.File,
            Verdict = CheckVerdict.CannotTell,
            Exposure = master.Exposure,
            Settings = master.Settings,
            Temperature = master.Temperature,
            Reason = $"Cannot tell: {why}.",
        };

    /// <summary>The bias frames that go with the darks; null when there are none.</summary>
    private static FreshDarks? Bias(
        Inventory fresh,
        FrameSet darks,
        Dictionary<FrameSet, FreshDarks?> cache,
        List<Finding> findings,
        CancellationToken cancellation
    )
    {
        FrameSet? set = fresh
            .Sets.Where(s =>
                s.Kind == FrameKind.Bias
                && s.Settings == darks.Settings
                && s.Width == darks.Width
                && s.Height == darks.Height
            )
            .MinBy(s => Math.Abs((s.TemperatureCelsius ?? 1e3) - (darks.TemperatureCelsius ?? 0)));
        if (set is null)
            return null;
        if (!cache.TryGetValue(set, out FreshDarks? bias))
            cache[set] = bias = FreshDarks.Of(set, findings, cancellation);
        return bias;
    }
}
