using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Identity;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Compares profiles of one camera over the years: is the sensor ageing?</summary>
/// <remarks>
/// Each quantity of the last profile is compared with the first: z = Δ/√(u₁² + u₂²), where u includes the
/// night-to-night variation. With three or more dates, a weighted straight line gives the change per year. All tests of
/// all modes share one probability of a false alarm by Holm's step-down rule (1979, Scand. J. Stat. 6, 65), which holds
/// however the quantities are correlated; those in electrons share their session's gain, whose uncertainty is part of
/// each.
/// </remarks>
public static class DriftComparison
{
    /// <summary>Compares profiles and, if they come with maps, their hot pixels one by one.</summary>
    /// <param name="profiles">Two or more, in any order.</param>
    /// <param name="options">Significance, temperatures, the stack that the dark library serves.</param>
    /// <param name="refused">Files that could not be read; the answer names them.</param>
    public static DriftAnswer Run(
        IReadOnlyList<ProfileOnDisk> profiles,
        DriftOptions? options = null,
        IReadOnlyList<RejectedFile>? refused = null
    ) => Run(profiles, PixelRates.Read, options, refused);

    /// <summary>The same, with maps from any source.</summary>
    internal static DriftAnswer Run(
        IReadOnlyList<ProfileOnDisk> profiles,
        Func<ProfileOnDisk, int, (PixelRates?, Finding?)> readMaps,
        DriftOptions? options = null,
        IReadOnlyList<RejectedFile>? refused = null
    )
    {
        ArgumentNullException.ThrowIfNull(profiles);
        options ??= new DriftOptions();
        if (!(options.Significance is > 0 and < 1))
            throw new DecisionRefusedException(
                RefusalKind.BadArgument,
                FindingCodes.SignificanceOutOfRange,
                "The significance must lie between 0 and 1."
            );
        (IReadOnlyList<ProfileOnDisk> kept, IReadOnlyList<RejectedFile> foreign) = ComparableProfiles.Select(profiles);
        SensorSorting sensors = SensorSorting.Sort(kept, readMaps);
        kept = sensors.Kept;
        IReadOnlyList<RejectedFile> left = [.. refused ?? [], .. foreign];
        List<Finding> findings = [.. Findings(kept, left), .. IdentityFindings.Judge(sensors)];
        left = [.. left, .. sensors.Others];
        if (kept.Count < 2 && sensors.Others.Count > 0)
            return DriftAnswers.AnotherSensor(kept, sensors.Others, left, findings);
        if (kept.Count < 2)
            return DriftAnswers.CannotTell(DriftGap.FewProfiles, kept, left, findings);
        IReadOnlyList<MatchedMode> modes = MatchedMode.Match(kept, findings);
        if (modes.Count == 0)
            return DriftAnswers.CannotTell(DriftGap.NoCommonSettings, kept, left, findings);
        ModeComparison[] raw = [.. modes.Select(m => ModeComparison.Compare(m, options, readMaps, findings))];
        ModeComparison[] judged = Judge(raw, options.Significance);
        ProbeOrAgeing[] probes = [.. judged.Select(m => Probe(m, options)).OfType<ProbeOrAgeing>()];
        if (probes.Any(ProbeMoved))
        {
            // ageing is what is left after correcting for the probe
            judged = Judge([.. raw.Select(m => WithoutProbeError(m, raw, probes))], options.Significance);
            probes = [.. probes.Select(p => Settled(p, probes, judged))];
        }
        LibraryForecast[] library = [.. judged.Select(m => Outlook(m, options, findings)).OfType<LibraryForecast>()];
        foreach (ModeComparison mode in judged)
            findings.AddRange(GainFinding.Judge(mode));
        return DriftAnswers.Build(kept, left, judged, probes, library, findings, options);
    }

    /// <summary>Applies Holm's rule to every change and every trend of every mode.</summary>
    private static ModeComparison[] Judge(ModeComparison[] modes, double significance)
    {
        double[] adjusted = HolmAdjustment.Adjust([
            .. modes.SelectMany(m => m.Changes.Select(c => c.P).Concat(m.Trends.Select(t => t.P))),
        ]);
        int next = 0;
        List<ModeComparison> judged = [];
        foreach (ModeComparison mode in modes)
        {
            DriftChange[] changes =
            [
                .. mode.Changes.Select(c =>
                    c with
                    {
                        AdjustedP = adjusted[next],
                        Changed = adjusted[next++] < significance,
                        Detectable = DriftTest.Detectable(c.Change.StandardUncertainty, significance, adjusted.Length),
                    }
                ),
            ];
            DriftTrend[] trends =
            [
                .. mode.Trends.Select(t =>
                    t with
                    {
                        AdjustedP = adjusted[next],
                        Changed = adjusted[next++] < significance,
                    }
                ),
            ];
            judged.Add(mode with { Changes = changes, Trends = trends });
        }
        return [.. judged];
    }

    private static ProbeOrAgeing? Probe(ModeComparison mode, DriftOptions options)
    {
        if (
            mode.DarkTemperature is not double celsius
            || mode.Changes.FirstOrDefault(c => c.Quantity == QuantityNames.DarkRate) is not { } dark
        )
            return null;
        bool changed = DarkChanged(mode);
        // keeps the more certain of the two
        DriftChange typical = mode.Changes.FirstOrDefault(c => c.Quantity == QuantityNames.DarkRateByPixel) ?? dark;
        return ProbeTest.Judge(
            mode.Mode,
            typical with
            {
                Changed = changed,
            },
            mode.Match,
            celsius,
            mode.DoublingOf,
            options,
            mode.Shift
        );
    }

    private static bool ProbeMoved(ProbeOrAgeing probe) => probe.Verdict is ProbeVerdict.Probe or ProbeVerdict.Both;

    private static bool DarkChanged(ModeComparison mode) =>
        mode.Changes.Any(c => IsDark(c.Quantity) && c.Changed) || mode.Trends.Any(t => IsDark(t.Quantity) && t.Changed);

    /// <summary>
    /// The probe belongs to the camera: a mode without maps takes its error from another mode of the same sessions.
    /// </summary>
    private static ModeComparison WithoutProbeError(ModeComparison mode, ModeComparison[] all, ProbeOrAgeing[] probes)
    {
        ModeComparison? teller = all.Where(m => SameSessions(m, mode) && Moved(m, probes))
            .OrderBy(m => m == mode ? 0 : 1)
            .FirstOrDefault();
        return teller is null || (mode.Match is not null && teller != mode)
            ? mode
            : mode.WithoutProbeError(teller.Steps);
    }

    private static bool Moved(ModeComparison mode, ProbeOrAgeing[] probes) =>
        probes.Any(p => p.Mode == mode.Mode.Name && ProbeMoved(p));

    private static bool SameSessions(ModeComparison a, ModeComparison b) =>
        a.Mode.Members.Select(m => m.Profile.File).SequenceEqual(b.Mode.Members.Select(m => m.Profile.File));

    /// <summary>Makes the verdict agree with the corrected comparison.</summary>
    private static ProbeOrAgeing Settled(ProbeOrAgeing probe, ProbeOrAgeing[] all, ModeComparison[] judged)
    {
        ModeComparison mode = judged.Single(m => m.Mode.Name == probe.Mode);
        bool changed = DarkChanged(mode);
        if (ProbeMoved(probe) || mode.Match is not null)
            return ProbeTest.Settled(probe, changed);
        ProbeOrAgeing? teller = all.FirstOrDefault(p =>
            ProbeMoved(p) && SameSessions(judged.Single(m => m.Mode.Name == p.Mode), mode)
        );
        return teller is null ? probe : ProbeTest.Settled(teller with { Mode = probe.Mode }, changed);
    }

    private static bool IsDark(string quantity) => quantity is QuantityNames.DarkRate or QuantityNames.DarkRateByPixel;

    private static LibraryForecast? Outlook(ModeComparison mode, DriftOptions options, List<Finding> findings) =>
        options.Stack is { } stack
        && (
            mode.Trends.FirstOrDefault(t => t.Quantity == QuantityNames.DarkRateByPixel)
            ?? mode.Trends.FirstOrDefault(t => t.Quantity == QuantityNames.DarkRate)
        )
            is { } rate
        && mode.Changes.FirstOrDefault(c => c.Quantity == QuantityNames.DoublingTemperature)
            is { To.Value: > 0 } doubling
            ? LibraryOutlook.Forecast(mode.Mode, rate, doubling.To.Value, mode.HotPixels, stack, findings)
            : null;

    private static IEnumerable<Finding> Findings(IReadOnlyList<ProfileOnDisk> kept, IReadOnlyList<RejectedFile> left)
    {
        if (left.Count > 0)
            yield return new Finding(
                FindingCodes.ProfilesRefused,
                Severity.Warning,
                $"{Counted.Nouns(left.Count, "profile")} {(left.Count == 1 ? "was" : "were")} left out: "
                    + $"{string.Join(" ", left.Select(r => $"{r.File}: {r.Reason}"))}",
                [.. left.Select(r => r.File)]
            );
        ProfileOnDisk[] undated = [.. kept.Where(p => !p.HasDateOfFrames)];
        if (undated.Length > 0)
            yield return new Finding(
                FindingCodes.DateOfProfile,
                Severity.Note,
                "Frames without a date: the day of the profile was used as the day of the frames; check "
                    + "that they are close.",
                [.. undated.Select(p => p.File)]
            );
        string[] versions = [.. kept.Select(p => p.Profile.Software.Version).Distinct()];
        if (versions.Length > 1)
            yield return new Finding(
                FindingCodes.VersionsDiffer,
                Severity.Note,
                "The profiles were made by different versions of this program "
                    + $"({string.Join(", ", versions)}): where a change matters, characterise the old frames again "
                    + "with the current one."
            );
    }
}
