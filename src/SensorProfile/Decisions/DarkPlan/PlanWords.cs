using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>A plan of darks in words.</summary>
internal static class PlanWords
{
    /// <summary>
    /// Few people take more darks than this of one exposure and temperature; a plan that asks for more says so.
    /// </summary>
    internal const int PracticalFrames = 50;

    internal static PlanAnswer Answer(PlanQuestion question, PlanCourse course, DitherSaving? saving)
    {
        List<MasterPlan> masters = course.Masters;
        int frames = masters.Sum(m => m.Frames);
        double seconds = masters.Sum(m => m.Seconds),
            bytes = masters.Sum(m => m.Bytes),
            each = frames > 0 ? course.FramesUncertainty / frames : 0;
        bool told = course.Unplanned.Count == 0 && course.Blind is null;
        return new PlanAnswer
        {
            Sentence = Sentence(course, frames, seconds, bytes),
            Reason = Reason(question, course, saving, frames),
            Verdict = told ? "answered" : NoiseModel.Answers.Answer.CannotTell,
            Quantities = new Dictionary<string, Measurement?>
            {
                ["totalFrames"] = new(
                    frames,
                    course.FramesUncertainty,
                    "frames",
                    masters.Count,
                    "fewest frames within the loss, uncertainties drawn"
                ),
                ["totalTime"] = new(seconds, each * seconds, "s", masters.Count, "exposure and read-out"),
                ["diskSpace"] = new(
                    bytes / 1e6,
                    each * bytes / 1e6,
                    "MB",
                    masters.Count,
                    "16-bit frames of this camera"
                ),
            },
            Intervals =
                course.High > course.Low
                    ? new Dictionary<string, Interval> { ["totalFrames"] = new(course.Low, course.High) }
                    : new Dictionary<string, Interval>(),
            Cautions = question.Cooled ? Cautions.Cooling : Cautions.NightDarks,
            RulesOfThumb =
            [
                "\"5-minute darks are typical\" (common practice, no source): the plan takes 300 s when no "
                    + "lights are given, else the exposures of the lights.",
                "\"At least 20 darks\" (common practice, no source): "
                    + $"{(masters.All(m => m.Frames <= 20) ? "more than enough here" : "not enough for every master here")}.",
            ],
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

    private static string Sentence(PlanCourse course, int frames, double seconds, double bytes)
    {
        int masters = course.Masters.Count;
        string shoot =
            $"Shoot {Said.Whole(masters)} master dark{(masters == 1 ? At(course.Masters[0]) : "s")}, "
            + $"{Said.Whole(frames)} frames in all: {Said.Duration(seconds)} and {Said.Bytes(bytes)}";
        if (course.Unplanned.Count > 0)
            return $"{shoot}; for {Said.Whole(course.Unplanned.Sum(u => u.Lights))} lights "
                + $"({string.Join(", ", course.Unplanned.Select(Where))}) it cannot be told.";
        return course.Blind is null
            ? shoot + "."
            : $"Cannot tell how far one master serves; the best guess is: {char.ToLowerInvariant(shoot[0])}{shoot[1..]}.";
    }

    private static string At(MasterPlan master) =>
        $" of {Said.Seconds(master.Exposure)} at {Said.Celsius(master.Temperature)}";

    private static string Where(UnplannedLights lights) =>
        $"{Said.Seconds(lights.Exposure)} {Range(lights.From, lights.To)}";

    private static string Reason(PlanQuestion question, PlanCourse course, DitherSaving? saving, int frames)
    {
        MasterPlan? last = question.Cooled
            ? null
            : course.Masters.LastOrDefault(m => m.When.StartsWith("end", StringComparison.Ordinal));
        string fewest =
            "These are the fewest frames that keep every planned light "
            + $"{(course.Unplanned.Count > 0 ? "that the profile reaches " : "")}within "
            + $"{Said.Percent(question.Limits.NoiseLoss)}, mismatch and number of darks together.";
        string cover =
            course.CoverMasters < course.Masters.Count
                ? $" With {Said.Whole(course.CoverMasters)} masters instead of {Said.Whole(course.Masters.Count)} it "
                    + $"would take {Said.Whole((long)course.CoverFrames)} frames."
                : "";
        string dither =
            saving is null || saving.Frames >= frames
                ? ""
                : $" Dithered over {Said.Whole(saving.Positions)} positions, {Said.Whole(saving.Frames)} frames "
                    + "would "
                    + $"do{(saving.Masters == course.Masters.Count ? "" : $" in {Said.Whole(saving.Masters)} master{(saving.Masters == 1 ? "" : "s")}")}.";
        return fewest
            + cover
            + dither
            + (
                last is null
                    ? ""
                    : $" Shoot the {Said.Celsius(last.Temperature)} master at the end of the night, when the sensor is that cold."
            );
    }

    internal static IEnumerable<Finding> Findings(PlanQuestion question, PlanCourse course, DitherSaving? saving)
    {
        foreach (UnplannedLights lights in course.Unplanned)
            yield return new Finding(
                "lights-not-planned",
                Severity.Warning,
                $"No master can be planned for {Said.Whole(lights.Lights)} lights, {Where(lights)}. "
                    + $"{lights.Reason} Such darks would be {SettlingFrames.Words(lights.Settling)}."
            );
        if (course.Blind is { } darks)
            yield return new Finding(
                "masters-not-sure",
                Severity.Warning,
                "Which temperatures one master serves depends on the spread over pixels; "
                    + $"{SettlingFrames.Words([darks])} would show it: characterise again with them."
            );
        if (course.Masters.Max(m => m.Frames) <= PracticalFrames)
            yield break;
        MasterPlan most = course.Masters.MaxBy(m => m.Frames)!;
        DarkCountAnswer? stack = course
            .Stacks.Where(s => s.Stack.ExposureSeconds == most.Exposure)
            .MaxBy(s => s.Quantities["darks"]?.Value ?? 0);
        double? loss = stack?.Curve.FirstOrDefault(p => p.Darks == PracticalFrames)?.Loss;
        yield return new Finding(
            "more-darks-than-practical",
            Severity.Warning,
            $"{Said.Whole(most.Frames)} darks in one master ({Said.Duration(most.Seconds)}) are more than most people take"
                + (
                    loss is double percent
                        ? $"; {Said.Whole(PracticalFrames)} of them cost this stack "
                            + $"{Said.Percent(percent / 100)} instead of {Said.Percent(question.Limits.NoiseLoss)}"
                        : ""
                )
                + (saving is null ? "." : "; dithering averages the noise of the master too.")
        );
    }

    internal static string Reason(PlanQuestion question, MasterGroup group, LightSlice[] served)
    {
        double lights = served.Sum(s => s.Share * s.Plan.Lights);
        string why =
            group.Frames <= question.LeastFrames
                ? "the fewest that can tell a cosmic-ray hit"
                : $"fewer would cost more than {Said.Percent(question.Limits.NoiseLoss)}";
        return $"Serves about {Said.Whole((long)Math.Round(lights))} lights "
            + $"{Range(served[0].Celsius, served[^1].Celsius)}; {Said.Whole((long)group.Frames)} frames: {why}"
            + (group.Load > 0.005 ? $"; the mismatch uses {Said.Percent(group.Load)} of its limit." : ".");
    }

    private static string Range(double low, double high) =>
        high - low < 0.05 ? $"at {Said.Celsius(low)}" : $"between {Said.Celsius(low)} and {Said.Celsius(high)}";

    internal static string When(PlanQuestion question, MasterGroups groups, MasterGroup group, LightSlice[] served)
    {
        if (question.Cooled)
            return "";
        double end = served.Min(s => Math.Min(s.Plan.StartCelsius, s.Plan.EndCelsius ?? s.Plan.StartCelsius));
        bool coldest = served.Any(s => s.Celsius <= groups.Slices[0].Celsius + 1e-9);
        return Math.Abs(group.Celsius - end) <= MasterGroups.EndOfNight && coldest
            ? "end of the night, when the lights are done"
            : $"whenever the sensor is near {Said.Celsius(group.Celsius)}: between the lights, or in the evening "
                + "of a warmer night";
    }
}
