using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Is my dark library still good? Checks old master darks against a few fresh dark frames.</summary>
/// <remarks>
/// The master, converted to ADU and to the level of the fresh darks, is subtracted from their mean. What is left beyond
/// the noise of the fresh darks is what every calibrated light would carry, including the master's own noise. It is
/// judged against the noise of the stack that the master serves, by the same limits as the dark matching. Age is not a
/// criterion.
/// </remarks>
public static class DarkLibraryCheck
{
    /// <summary>Checks masters.</summary>
    /// <param name="masterPaths">Master darks, FITS, from any program.</param>
    /// <param name="fresh">Inventory of the fresh frames: darks that match the masters, two or more of each; a few bias
    /// frames help where the bias was subtracted from a master.</param>
    /// <param name="profile">Supplies the gain, so that residuals are in electrons and the sky counts; with null they
    /// are in ADU.</param>
    /// <param name="options">The stack and its limits.</param>
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
            .. SetPoints.NotHeld(fresh.Sets),
        ];
        fresh = fresh with { Sets = joined };
        if (masterPaths.Count == 0)
            throw Refuse.BadArgument(FindingCodes.NoMaster, "Give at least one master dark to check.");
        ModeProfile? mode = profile is null
            ? null
            : ModeChoice.Find(profile, options.Mode ?? SettingsOf(fresh, profile));
        Measurement? gain = mode is null ? null : ChannelMean.Average(mode).Gain;
        ColourScale? colours = mode is null ? null : ColourScale.Find(profile!, mode, gain);
        if (colours is not null)
            findings.Add(colours.Notice);
        var ruler = new StackRuler(gain, options);
        var cache = new Dictionary<FrameSet, FreshDarks?>();
        List<MasterVerdict> verdicts = [];
        foreach (string path in masterPaths)
        {
            cancellation.ThrowIfCancellationRequested();
            verdicts.Add(CheckOne(path, fresh, profile, colours, ref ruler, cache, findings, cancellation));
        }
        return DarkLibraryVerdict.Judge(
            verdicts,
            ruler,
            [.. cache.Values.OfType<FreshDarks>().Where(f => f.Set.Kind != FrameKind.Bias)],
            findings
        );
    }

    /// <summary>
    /// Picks the mode of a profile with several: that of the fresh darks, if these share one setting.
    /// </summary>
    private static ModeSettings? SettingsOf(Inventory fresh, CameraProfile profile)
    {
        ModeSettings[] taken = [.. fresh.Sets.Where(s => s.Kind == FrameKind.Dark).Select(s => s.Settings).Distinct()];
        return profile.Modes.Count > 1 && taken is [var only] ? only : null;
    }

    private static MasterVerdict CheckOne(
        string path,
        Inventory fresh,
        CameraProfile? profile,
        ColourScale? colours,
        ref StackRuler ruler,
        Dictionary<FrameSet, FreshDarks?> cache,
        List<Finding> findings,
        CancellationToken cancellation
    )
    {
        try
        {
            MasterDark master = MasterDark.Read(path);
            (FrameSet? set, MasterReason? why) = FreshChoice.Choose(master, fresh, profile, ruler.Options);
            if (set is null)
                return CannotTell(master, why!);
            if (!cache.TryGetValue(set, out FreshDarks? darks))
                cache[set] = darks = FreshDarks.Read(set, findings, cancellation);
            if (darks is null)
                return CannotTell(master, new MasterReason(MasterGround.FewReadable));
            if (!(darks.TemporalVariance > 0))
                return CannotTell(master, new MasterReason(MasterGround.NoNoise));
            if (ruler.Gain is null && FreshGain.Measure(darks) is { } rough)
                ruler = ruler with { Gain = rough, GainIsRough = true };
            FreshDarks? bias = Bias(fresh, set, cache, findings, cancellation);
            if (Realignment.Find(master, darks, bias) is not { } aligned)
                return CannotTell(master, FreshChoice.Why(MasterGround.OtherSizeUnexplained, master, set));
            if (aligned.Foreign is { } common)
                return Foreign(master, common);
            Realignment even = colours?.Apply(aligned) ?? aligned;
            MasterVerdict verdict = MasterCheck.Check(even.Master, even.Fresh, even.Bias, ruler, profile);
            return verdict with { Realigned = aligned.Words, OtherSize = aligned.OtherSize };
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            findings.Add(
                new Finding(
                    FindingCodes.MasterUnreadable,
                    Severity.Warning,
                    $"{path} was left out: {problem.Message}",
                    [path]
                )
            );
            return new MasterVerdict(new MasterReason(MasterGround.Unreadable) { Problem = problem.Message })
            {
                File = path,
                Verdict = CheckVerdict.CannotTell,
            };
        }
    }

    private static MasterVerdict Foreign(MasterDark master, CommonHotPixels common) =>
        new(new MasterReason(MasterGround.OtherSensor) { Common = common })
        {
            File = master.File,
            Verdict = CheckVerdict.Retake,
            Exposure = master.Exposure,
            Settings = master.Settings,
            Temperature = master.Temperature,
        };

    private static MasterVerdict CannotTell(MasterDark master, MasterReason why) =>
        new(why)
        {
            File = master.File,
            Verdict = CheckVerdict.CannotTell,
            Exposure = master.Exposure,
            Settings = master.Settings,
            Temperature = master.Temperature,
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
            cache[set] = bias = FreshDarks.Read(set, findings, cancellation);
        return bias;
    }
}
