using SensorProfile.Profiles;

namespace SensorProfile.Decisions;

/// <summary>Which master darks to shoot: temperatures, exposures, settings and frames that keep every planned light within the loss.</summary>
public static class DarksPlan
{
    /// <summary>The plan with the fewest frames.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="question">The planned lights.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static PlanAnswer Find(CameraProfile profile, PlanQuestion question)
    {
        Check(question);
        List<Finding> findings = [];
        SkyRate sky = question.Sky ?? NamedSkies.NarrowBand;
        if (question.Sky is null) findings.Add(DarkCountAdvice.SkyAssumed(sky));
        IReadOnlyList<PlannedLights> lights = question.Lights.Count > 0 ? question.Lights : Assumed(profile, findings);
        var masters = new List<MasterPlan>();
        double variance = 0;
        foreach (var group in lights.GroupBy(l => (Mode: ModeChoice.Find(profile, l.Settings), l.ExposureSeconds)).OrderBy(g => g.Key.ExposureSeconds))
        {
            var reader = SensorReader.Of(profile, group.Key.Mode);
            findings.AddRange(reader.Notes);
            CheckLights(reader, group, sky, findings);
            var groups = new MasterGroups(reader.Best, question, sky.Rate.Value, group.SelectMany(LightSlice.Of));
            foreach (MasterGroup master in groups.Fewest())
            {
                masters.Add(Master(reader, question, groups, master));
                variance += Square(Propagation.Through(reader, sky.Rate, (model, s) => [groups.FramesOf(master, model, s)])[0].StandardDeviation);
            }
        }
        DarkCountAnswer[] stacks = [.. lights.Select(l => Count(profile, question, sky, l))];
        if (!question.Cooled) masters = [.. masters.OrderByDescending(m => m.Temperature)];
        return Answer(question, masters, findings, Math.Sqrt(variance)) with { Stacks = stacks };
    }

    private static DarkCountAnswer Count(CameraProfile profile, PlanQuestion question, SkyRate sky, PlannedLights lights) =>
        DarkCountAdvice.Find(profile, ModeChoice.Find(profile, lights.Settings), new DarkCountQuestion
        {
            ExposureSeconds = lights.ExposureSeconds, TemperatureCelsius = lights.StartCelsius, Lights = lights.Lights, DitherPositions = lights.DitherPositions, Sky = sky, Loss = question.Limits.NoiseLoss,
        });

    private static PlanAnswer Answer(PlanQuestion question, List<MasterPlan> masters, List<Finding> findings, double framesUncertainty)
    {
        int frames = masters.Sum(m => m.Frames);
        double seconds = masters.Sum(m => m.Seconds), bytes = masters.Sum(m => m.Bytes);
        MasterPlan? last = question.Cooled ? null : masters.LastOrDefault(m => m.When.StartsWith("end", StringComparison.Ordinal));
        return new PlanAnswer
        {
            Sentence = $"Shoot {Said.Whole(masters.Count)} master dark{(masters.Count == 1 ? "" : "s")}, {Said.Whole(frames)} frames in all: {Said.Duration(seconds)} and {Said.Bytes(bytes)}.",
            Reason = $"These are the fewest frames that keep every planned light within {Said.Percent(question.Limits.NoiseLoss)}, mismatch and number of darks together."
                + (last is null ? "" : $" Shoot the {Said.Celsius(last.Temperature)} master at the end of the night, when the sensor is that cold."),
            Verdict = "answered",
            Quantities = new Dictionary<string, Measurement?>
            {
                ["totalFrames"] = new Measurement(frames, framesUncertainty, "frames", masters.Count, "fewest frames within the loss, uncertainties drawn"),
                ["totalTime"] = new Measurement(seconds, framesUncertainty * (frames > 0 ? seconds / frames : 0), "s", masters.Count, "exposure and read-out"),
                ["diskSpace"] = new Measurement(bytes / 1e6, framesUncertainty * (frames > 0 ? bytes / frames / 1e6 : 0), "MB", masters.Count, "16-bit frames of this camera"),
            },
            Findings = [.. findings.Distinct()],
            Cautions = question.Cooled ? Cautions.Cooling : Cautions.NightDarks,
            RulesOfThumb =
            [
                "\"5-minute darks are typical\" (common practice, no source): the plan takes 300 s when no lights are given, else the exposures of the lights.",
                $"\"At least 20 darks\" (common practice, no source): {(masters.All(m => m.Frames <= 20) ? "more than enough here" : "not enough for every master here")}.",
            ],
            Masters = masters,
        };
    }

    private static MasterPlan Master(SensorReader reader, PlanQuestion question, MasterGroups groups, MasterGroup group)
    {
        LightSlice[] served = [.. groups.Slices.Skip(group.First).Take(group.Count)];
        double exposure = served[0].Plan.ExposureSeconds, low = served[0].Celsius, high = served[^1].Celsius;
        double lights = served.Sum(s => s.Share * s.Plan.Lights);
        string range = high - low < 0.05 ? $"at {Said.Celsius(low)}" : $"between {Said.Celsius(low)} and {Said.Celsius(high)}";
        string why = group.Frames <= question.LeastFrames ? "the fewest that can tell a cosmic-ray hit" : $"fewer would cost more than {Said.Percent(question.Limits.NoiseLoss)}";
        string reason = $"Serves about {Said.Whole((long)Math.Round(lights))} lights {range}; {Said.Whole((long)group.Frames)} frames: {why}"
            + (group.Load > 0.005 ? $"; the mismatch uses {Said.Percent(group.Load)} of its limit." : ".");
        double end = served.Min(s => Math.Min(s.Plan.StartCelsius, s.Plan.EndCelsius ?? s.Plan.StartCelsius));
        string when = question.Cooled ? "" : Math.Abs(group.Celsius - end) <= MasterGroups.EndOfNight && IsColdest(groups, group)
            ? "end of the night, when the lights are done" : $"whenever the sensor is near {Said.Celsius(group.Celsius)}: between the lights, or in the evening of a warmer night";
        double frameBytes = Math.Ceiling(2.0 * reader.Camera.Width * reader.Camera.Height / 2880) * 2880 + 5760;
        return new MasterPlan(exposure, group.Celsius, reader.Mode.Settings, (int)group.Frames, low, high, reason, when,
            group.Frames * (exposure + question.OverheadSeconds), group.Frames * frameBytes);
    }

    private static bool IsColdest(MasterGroups groups, MasterGroup group) =>
        groups.Slices.Skip(group.First).Take(group.Count).Any(s => s.Celsius <= groups.Slices[0].Celsius + 1e-9);

    private static PlannedLights[] Assumed(CameraProfile profile, List<Finding> findings)
    {
        double celsius = SensorReader.Of(profile, ModeChoice.Find(profile, null)).Best.PixelReference;
        findings.Add(new Finding("lights-assumed", Severity.Note, $"No lights were given; the plan is for 40 lights of 300 s at {Said.Celsius(celsius)}: give the folder of your lights, or exposure, temperature and number."));
        return [PlannedLights.Usual(celsius)];
    }

    private static void CheckLights(SensorReader reader, IEnumerable<PlannedLights> lights, SkyRate sky, List<Finding> findings)
    {
        foreach (PlannedLights plan in lights)
        {
            Guard.Conditions(new StackConditions
            {
                Sky = sky.Rate, ExposureSeconds = plan.ExposureSeconds, TemperatureCelsius = plan.StartCelsius, Lights = plan.Lights, DitherPositions = plan.DitherPositions,
            });
            findings.AddRange(Guard.Exposure(reader, plan.ExposureSeconds));
            findings.AddRange(Guard.Temperature(reader, plan.StartCelsius, "temperature of the lights"));
            if (plan.EndCelsius is double end) findings.AddRange(Guard.Temperature(reader, end, "temperature at the end of the night"));
        }
        if (reader.Best.Pixels is null) findings.Add(Missing.Distribution("only the glow and the level limit the mismatch in this plan"));
    }

    private static void Check(PlanQuestion question)
    {
        question.Limits.Check();
        if (question.Sky is { } sky) Guard.Sky(sky.Rate);
        Refuse.UnlessCount(question.LeastFrames, 1, "least-frames-not-positive", "frames in a master");
        if (!(question.OverheadSeconds >= 0)) throw Refuse.BadArgument("overhead-negative", "The time between two frames must be 0 s or more.");
    }

    private static double Square(double x) => x * x;
}
