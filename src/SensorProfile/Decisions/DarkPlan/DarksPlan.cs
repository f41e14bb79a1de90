using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>
/// Which master darks to shoot: temperatures, exposures, settings and numbers of frames that keep every planned light
/// within the loss.
/// </summary>
public static class DarksPlan
{
    /// <summary>
    /// Few people take more darks than this of one exposure and temperature; a plan that asks for more says so.
    /// </summary>
    internal const int PracticalFrames = 50;

    private static readonly int[] usualPositions = [2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100];

    /// <summary>
    /// The plan with the fewest frames; lights beyond the reach of the profile are listed separately.
    /// </summary>
    /// <param name="profile">The camera.</param>
    /// <param name="question">The planned lights.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer any of
    /// it.</exception>
    public static PlanAnswer Find(CameraProfile profile, PlanQuestion question)
    {
        Check(question);
        List<Finding> findings = [];
        SkyRate sky = NamedSkies.OrDefault(question.Sky);
        if (question.Sky is null)
            findings.Add(DarkCountAdvice.SkyAssumed(sky));
        IReadOnlyList<PlannedLights> lights =
            question.Lights.Count > 0 ? question.Lights : Assumed(profile, question, findings);
        PlanCourse course = Course(profile, question, sky, lights, findings);
        if (course.Masters.Count == 0)
            throw course.Refused!;
        DitherSaving? saving = Saving(profile, question, sky, lights, course);
        return Answer(question, course, saving) with
        {
            Stacks = [.. course.Stacks],
            Findings = [.. findings.Distinct()],
        };
    }

    private static PlanAnswer Answer(PlanQuestion question, PlanCourse course, DitherSaving? saving)
    {
        List<MasterPlan> masters = course.Masters;
        int frames = masters.Sum(m => m.Frames);
        double seconds = masters.Sum(m => m.Seconds),
            bytes = masters.Sum(m => m.Bytes),
            each = frames > 0 ? course.FramesUncertainty / frames : 0;
        bool told = course.Unplanned.Count == 0 && course.Blind is null;
        return new PlanAnswer
        {
            Verdict = told ? PlanVerdict.Answered : PlanVerdict.CannotTell,
            Cooled = question.Cooled,
            Loss = question.Limits.NoiseLoss,
            CoverMasters = course.CoverMasters,
            CoverFrames = course.CoverFrames,
            SpreadDarks = course.Blind,
            Quantities = new Dictionary<string, Measurement?>
            {
                [QuantityNames.TotalFrames] = new(
                    frames,
                    course.FramesUncertainty,
                    "frames",
                    masters.Count,
                    "fewest frames within the loss, uncertainties drawn"
                ),
                [QuantityNames.TotalTime] = new(seconds, each * seconds, "s", masters.Count, "exposure and read-out"),
                [QuantityNames.DiskSpace] = new(
                    bytes / 1e6,
                    each * bytes / 1e6,
                    "MB",
                    masters.Count,
                    "16-bit frames of this camera"
                ),
            },
            Intervals =
                course.High > course.Low
                    ? new Dictionary<string, Interval> { [QuantityNames.TotalFrames] = new(course.Low, course.High) }
                    : new Dictionary<string, Interval>(),
            Masters = masters,
            Unplanned = course.Unplanned,
            Settling =
            [
                .. course.Unplanned.SelectMany(u => u.Settling),
                .. course.Blind is { } darks ? [darks] : Array.Empty<SettlingFrames>(),
            ],
            Saving = saving,
        };
    }

    private static PlanCourse Course(
        CameraProfile profile,
        PlanQuestion question,
        SkyRate sky,
        IReadOnlyList<PlannedLights> lights,
        List<Finding> findings
    )
    {
        var course = new PlanCourse();
        foreach (
            var group in lights
                .GroupBy(l => (Mode: ModeChoice.Find(profile, l.Settings), l.ExposureSeconds))
                .OrderBy(g => g.Key.ExposureSeconds)
        )
        {
            IReadOnlyList<SensorReader> readers = ColourModes.Readers(profile, group.Key.Mode);
            SensorReader reader = readers[0];
            findings.AddRange([.. reader.Notes, .. ColourModes.ServedTogether(group.Key.Mode)]);
            var slices = new List<LightSlice>();
            foreach (PlannedLights plan in group)
            {
                Guard.Conditions(Stack(plan, sky, plan.StartCelsius));
                LightSlice[] within = [.. PlanReach.Within(reader, plan, sky, course, findings)];
                if (within.Length == 0)
                    continue;
                slices.AddRange(within);
                double typical = within.OrderBy(s => Math.Abs(s.Celsius - plan.StartCelsius)).First().Celsius;
                course.Stacks.Add(
                    Count(
                        profile,
                        question,
                        sky,
                        plan,
                        Math.Abs(typical - plan.StartCelsius) < 0.5 ? plan.StartCelsius : typical
                    )
                );
            }
            if (slices.Count > 0)
                AddMasters(course, readers, question, sky, slices);
            if (reader.Best.Pixels is null)
                findings.Add(MissingInputs.Distribution("only the glow and the level limit the mismatch in this plan"));
        }
        if (!question.Cooled)
            course.Masters = [.. course.Masters.OrderByDescending(m => m.Temperature)];
        return course;
    }

    private static void AddMasters(
        PlanCourse course,
        IReadOnlyList<SensorReader> readers,
        PlanQuestion question,
        SkyRate sky,
        List<LightSlice> slices
    )
    {
        var groups = new MasterGroups([.. readers.Select(r => r.Best)], question, sky.Rate.Value, slices);
        IReadOnlyList<MasterGroup> fewest = groups.Fewest(),
            cover = groups.FewestMasters();
        // the colour that needs the most frames
        SensorReader reader = readers.MaxBy(r => fewest.Sum(g => groups.FramesOf(g, r.Best, sky.Rate.Value)))!;
        UncertaintyDraws.Spread[] spreads = UncertaintyDraws.Through(reader, sky.Rate, (model, s) =>
        {
            double?[] frames = [.. fewest.Select(g => (double?)groups.FramesOf(g, model, s))];
            return [.. frames, frames.Sum()];
        });
        for (int i = 0; i < fewest.Count; i++)
            course.Masters.Add(Master(reader, question, groups, fewest[i], spreads[i]));
        course.AddTotal(spreads[^1], fewest.Sum(g => g.Frames));
        course.CoverMasters += cover.Count;
        course.CoverFrames += cover.Sum(g => g.Frames);
        if (
            reader.Best.Pixels is null
            && fewest.Any(g => groups.Slices[g.First + g.Count - 1].Celsius - groups.Slices[g.First].Celsius > 0.05)
        )
            course.Blind = SettlingFrames.OfDistribution(reader, slices[0].Plan.ExposureSeconds, null);
    }

    /// <summary>
    /// The plan with enough dither positions to make its masters practical; null when it is practical already, or when
    /// no further dithering is possible.
    /// </summary>
    private static DitherSaving? Saving(
        CameraProfile profile,
        PlanQuestion question,
        SkyRate sky,
        IReadOnlyList<PlannedLights> lights,
        PlanCourse course
    )
    {
        int largest = course.Masters.Max(m => m.Frames),
            now = lights.Min(l => l.DitherPositions),
            most = lights.Min(l => l.Lights);
        // a median or winsorised mean of fewer positions cannot be judged, so it is not advised
        int fewest = lights.Any(l => l.Rejection is Rejection.Median or Rejection.Winsorised)
            ? StackConditions.MinPositions
            : 2;
        if (largest <= PracticalFrames || now >= most || most < fewest)
            return null;
        double needed = Math.Max(fewest, (double)now * largest / PracticalFrames);
        int positions = usualPositions.FirstOrDefault(k => k >= needed && k > now && k <= most, most);
        PlanCourse dithered = Course(
            profile,
            question,
            sky,
            [.. lights.Select(l => l with { DitherPositions = positions })],
            []
        );
        return new DitherSaving(positions, dithered.Masters.Sum(m => m.Frames), dithered.Masters.Count);
    }

    private static DarkCountAnswer Count(
        CameraProfile profile,
        PlanQuestion question,
        SkyRate sky,
        PlannedLights lights,
        double celsius
    ) =>
        DarkCountAdvice.Find(
            profile,
            ModeChoice.Find(profile, lights.Settings),
            new DarkCountQuestion
            {
                ExposureSeconds = lights.ExposureSeconds,
                TemperatureCelsius = celsius,
                Lights = lights.Lights,
                DitherPositions = lights.DitherPositions,
                Rejection = lights.Rejection,
                Sky = sky,
                Limits = question.Limits,
            }
        );

    private static MasterPlan Master(
        SensorReader reader,
        PlanQuestion question,
        MasterGroups groups,
        MasterGroup group,
        UncertaintyDraws.Spread spread
    )
    {
        LightSlice[] served = [.. groups.Slices.Skip(group.First).Take(group.Count)];
        double exposure = served[0].Plan.ExposureSeconds,
            low = served[0].Celsius,
            high = served[^1].Celsius;
        double frameBytes = Math.Ceiling(2.0 * reader.Camera.Width * reader.Camera.Height / 2880) * 2880 + 5760;
        return new MasterPlan(
            exposure,
            group.Celsius,
            reader.Mode.Settings,
            (int)group.Frames,
            low,
            high,
            group.Frames * (exposure + question.OverheadSeconds),
            group.Frames * frameBytes
        )
        {
            Lights = served.Sum(s => s.Share * s.Plan.Lights),
            FewestForHits = group.Frames <= question.MinFrames,
            MismatchUse = group.Load,
            When = question.Cooled ? null : When(groups, group, served),
            FramesInterval = new Interval(
                spread.Low is double a ? Math.Floor(a) : null,
                spread.High is double b ? Math.Ceiling(b) : null
            ),
        };
    }

    private static MasterTime When(MasterGroups groups, MasterGroup group, LightSlice[] served)
    {
        double end = served.Min(s => Math.Min(s.Plan.StartCelsius, s.Plan.EndCelsius ?? s.Plan.StartCelsius));
        bool coldest = served.Any(s => s.Celsius <= groups.Slices[0].Celsius + 1e-9);
        return Math.Abs(group.Celsius - end) <= MasterGroups.EndOfNight && coldest
            ? MasterTime.EndOfNight
            : MasterTime.NearTemperature;
    }

    private static PlannedLights[] Assumed(CameraProfile profile, PlanQuestion question, List<Finding> findings)
    {
        AssumedTemperature taken = AssumedTemperature.Choose(
            profile,
            ModeChoice.Find(profile, null),
            new StackDescription { Sky = question.Sky, Limits = question.Limits },
            question.Cooled
        );
        findings.Add(
            new Finding(
                FindingCodes.LightsAssumed,
                Severity.Note,
                $"No lights were given; the plan is for 40 lights of 300 s at {taken.Words}: give the folder of your "
                    + "lights, or their exposure, temperature and number."
            )
        );
        return [PlannedLights.Usual(taken.Celsius)];
    }

    private static StackConditions Stack(PlannedLights plan, SkyRate sky, double celsius) =>
        new()
        {
            Sky = sky.Rate,
            ExposureSeconds = plan.ExposureSeconds,
            TemperatureCelsius = celsius,
            Lights = plan.Lights,
            DitherPositions = plan.DitherPositions,
            Rejection = plan.Rejection,
        };

    private static void Check(PlanQuestion question)
    {
        question.Limits.Check();
        if (question.Sky is { } sky)
            Guard.Sky(sky.Rate);
        Refuse.UnlessCount(question.MinFrames, 1, FindingCodes.LeastFramesNotPositive, "frames in a master");
        if (!(question.OverheadSeconds >= 0))
            throw Refuse.BadArgument(FindingCodes.OverheadNegative, "The time between two frames must be 0 s or more.");
        foreach (double celsius in question.Lights.SelectMany(l => l.Temperatures))
            if (!double.IsFinite(celsius))
                throw Refuse.BadArgument(
                    FindingCodes.TemperatureNotANumber,
                    "The temperature of the lights must be a number in °C."
                );
    }
}
