using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>
/// Compares one mode over all its profiles; tests that all modes share are judged later.
/// </summary>
internal sealed record ModeComparison
{
    public required MatchedMode Mode { get; init; }

    public required double? DarkTemperature { get; init; }

    public required IReadOnlyList<DriftChange> Changes { get; init; }

    public required IReadOnlyList<DriftTrend> Trends { get; init; }

    public HotPixelMatch? Match { get; init; }

    public HotPixelDrift? HotPixels { get; init; }

    /// <summary>Doubling temperature of a pixel in the first profile's maps, °C.</summary>
    public Func<int, double> DoublingOf { get; init; } = _ => double.NaN;

    /// <summary>Temperature step by which the last profile's maps were moved to match the first, °C.</summary>
    public double Shift { get; init; }

    /// <summary>The quantities of every member, as measured at the temperatures the probe read.</summary>
    private IReadOnlyList<Quantity>[] Sessions { get; init; } = [];

    /// <summary>
    /// How much warmer the sensor was than in the first session at the same reading, by member; empty without maps.
    /// </summary>
    public IReadOnlyDictionary<int, HotPixelStep> Steps { get; private init; } = new Dictionary<int, HotPixelStep>();

    private double Repeatability { get; init; }

    public static ModeComparison Compare(
        MatchedMode mode,
        DriftOptions options,
        Func<ProfileOnDisk, int, (PixelRates?, Finding?)> readMaps,
        List<Finding> findings
    )
    {
        double? dark = CommonTemperature.OfDark(mode, options, findings),
            pattern = CommonTemperature.OfPattern(mode, findings);
        YearMaps? maps = YearMaps.Read(mode, options, readMaps, findings);
        IReadOnlyList<Quantity>[] all =
        [
            .. Enumerable
                .Range(0, mode.Members.Count)
                .Select(i =>
                    (IReadOnlyList<Quantity>)
                        [
                            .. Read(mode, i, dark, pattern, options, findings),
                            .. maps is not null && maps.Scales.TryGetValue(i, out Quantity? byPixel)
                                ? [byPixel]
                                : Array.Empty<Quantity>(),
                        ]
                ),
        ];
        var comparison = new ModeComparison
        {
            Mode = mode,
            DarkTemperature = dark,
            Changes = [],
            Trends = [],
            Sessions = all,
            Repeatability = options.TemperatureRepeatability,
            Steps = maps?.Steps ?? new Dictionary<int, HotPixelStep>(),
            Shift = maps?.Shift ?? 0,
        };
        comparison = comparison.Compared(probeMoved: false);
        return maps is null ? comparison : comparison.WithHotPixels(maps, options);
    }

    /// <summary>
    /// The same comparison at one temperature of the sensor: dark current and glow are corrected for the error of the
    /// temperature probe.
    /// </summary>
    /// <param name="steps">Steps by member; from another mode of the same sessions when this one has none.</param>
    public ModeComparison WithoutProbeError(IReadOnlyDictionary<int, HotPixelStep> steps)
    {
        DriftChange[] pixelwise =
        [
            .. Changes.Where(c => c.Quantity is QuantityNames.NewLessHealed or QuantityNames.GrowingPatch),
        ];
        ModeComparison corrected = (this with { Steps = steps }).Compared(probeMoved: true);
        return corrected with { Changes = [.. corrected.Changes, .. pixelwise] };
    }

    /// <summary>
    /// Changes and trends; hot-pixel counts at one temperature of the sensor if it is known.
    /// </summary>
    private ModeComparison Compared(bool probeMoved)
    {
        // one session without a step would be compared at another temperature: all or none
        bool known = Enumerable.Range(0, Sessions.Length).All(Steps.ContainsKey);
        double typical = DarkTemperature is double celsius
            ? ProbeTest.DoublingAt(Mode.Mode(Sessions.Length - 1), celsius)
            : 6;
        IReadOnlyList<Quantity>[] all = known
            ?
            [
                .. Sessions.Select(
                    (session, i) =>
                        ProbeCorrection.Correct(
                            session,
                            Mode.Mode(i),
                            Steps[i],
                            i == 0 ? 0 : HotPixelStep.DoublingDoubt * Math.Abs(Shift),
                            typical,
                            Repeatability,
                            probeMoved
                        )
                ),
            ]
            : Sessions;
        List<DriftChange> changes = [];
        List<DriftTrend> trends = [];
        foreach (Quantity to in all[^1])
        {
            if (
                all[0].FirstOrDefault(q => q.Name == to.Name && q.Value.Unit == to.Value.Unit) is { } from
                && Change(Mode.Name, from, to) is { } change
            )
                changes.Add(change);
            if (TrendFit.Fit(to.Name, Mode.Name, Points(all, to)) is { } trend)
                trends.Add(trend);
        }
        return this with { Changes = changes, Trends = trends };
    }

    private TrendPoint[] Points(IReadOnlyList<Quantity>[] all, Quantity to) =>
        [
            .. all.Select(
                    (list, i) =>
                        (
                            Date: Mode.Members[i].Profile.DateUtc,
                            Found: list.FirstOrDefault(q => q.Name == to.Name && q.Value.Unit == to.Value.Unit)
                        )
                )
                .Where(p => p.Found is not null)
                .Select(p => new TrendPoint(p.Date, p.Found!.Value)),
        ];

    private static IReadOnlyList<Quantity> Read(
        MatchedMode mode,
        int member,
        double? dark,
        double? pattern,
        DriftOptions options,
        List<Finding> findings
    )
    {
        ProfileOnDisk profile = mode.Members[member].Profile;
        try
        {
            return ComparedQuantities.Read(mode.Mode(member), profile.Profile.Camera.CodeStep, dark, pattern, options);
        }
        catch (ArgumentException problem) // an unknown law, or one without its covariance
        {
            findings.Add(
                new Finding(
                    FindingCodes.DarkLawUnreadable,
                    Severity.Warning,
                    $"The dark current of {profile.File} was not compared: {problem.Message.Split(" (Parameter")[0]}",
                    [profile.File]
                )
            );
            return ComparedQuantities.Read(mode.Mode(member), profile.Profile.Camera.CodeStep, null, pattern, options);
        }
    }

    private static DriftChange? Change(string mode, Quantity from, Quantity to)
    {
        double joint = DriftTest.Joint(from.Value, to.Value),
            step = to.Value.Value - from.Value.Value;
        if (!(joint > 0) && step != 0)
            return null;
        double p,
            z;
        if (to.IsCount)
            (p, z) = (
                DriftTest.CountsP(
                    from.Counted,
                    to.Counted,
                    to.Factor / from.Factor,
                    double.Hypot(from.Doubt, to.Doubt)
                ),
                0
            );
        else
            (z, p) = (DriftTest.Z(from.Value, to.Value), Probability.NormalTwoSided(DriftTest.Z(from.Value, to.Value)));
        if (to.IsCount)
            z = DriftTest.ZOf(p, step);
        var change = new Measurement(
            step,
            joint,
            to.Value.Unit,
            Math.Min(from.Value.Samples, to.Value.Samples),
            "last less first, joint uncertainty"
        );
        return new DriftChange(to.Name, mode, from.Value, to.Value, change, z, p, 1, false, 0);
    }

    private ModeComparison WithHotPixels(YearMaps maps, DriftOptions options)
    {
        double threshold = HotThreshold.Choose(Mode.Mode(0), maps.First.TypicalRate);
        HotPixelMatch match = HotPixelMatch.Match(maps.First, maps.Last, threshold);
        HotPixelDrift hot = HotPixelComparison.Compare(
            Mode.Name,
            match,
            maps.Last,
            threshold,
            TrendFit.Years(Mode.Members[0].Profile.DateUtc, Mode.Members[^1].Profile.DateUtc),
            options
        );
        return this with
        {
            Match = match,
            HotPixels = hot,
            DoublingOf = maps.First.Doubling,
            Changes = [.. Changes, .. Pixelwise(Mode.Name, hot)],
        };
    }

    /// <summary>
    /// Tests that the matched pixels add: more new than healed, and a patch that chance does not explain.
    /// </summary>
    private static IEnumerable<DriftChange> Pixelwise(string mode, HotPixelDrift hot)
    {
        Measurement Pixels(double count) =>
            new(count, Math.Sqrt(Math.Max(count, 1)), "px", (long)count, "hot pixels matched one by one");
        (double z, double p) = HotPixelComparison.Net(hot);
        yield return new DriftChange(
            QuantityNames.NewLessHealed,
            mode,
            Pixels(hot.Healed),
            Pixels(hot.New),
            new Measurement(
                hot.New - hot.Healed,
                Math.Sqrt(Math.Max(hot.New + hot.Healed, 1)),
                "px",
                hot.New + hot.Healed,
                "new less healed hot pixels"
            ),
            z,
            p,
            1,
            false,
            0
        );
        if (hot.Patches is [var patch, ..])
            yield return new DriftChange(
                QuantityNames.GrowingPatch,
                mode,
                new Measurement(
                    patch.Expected,
                    Math.Sqrt(Math.Max(patch.Expected, 1)),
                    "px",
                    patch.NewPixels,
                    "by chance"
                ),
                Pixels(patch.NewPixels),
                new Measurement(
                    patch.NewPixels - patch.Expected,
                    Math.Sqrt(patch.NewPixels),
                    "px",
                    patch.NewPixels,
                    "new hot pixels in the patch above chance"
                ),
                DriftTest.ZOf(patch.P, 1),
                patch.P,
                1,
                false,
                0
            );
    }
}
