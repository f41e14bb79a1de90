using SensorProfile.Frames;

namespace SensorProfile.Decisions;

/// <summary>The shot list for characterising a camera in a given time, and what existing frames still want.</summary>
public static class ShotList
{
    private const double WhiteFlatPercent = 130;
    private const double FlatSeconds = 1;          // a dim, even light gives a flat in about this time
    internal const double SameTemperature = 1;     // darks this close count as the temperature that was asked for, °C
    private const double RoomCelsius = 22;
    private const double LargestDifference = 120;  // no such cooler reaches farther below the ambient, °C
    private const double LongestExposure = 86_400; // a day, s

    /// <summary>The most thorough list that fits the time.</summary>
    /// <param name="question">Camera, cooler and time.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the time is too short for any characterisation.</exception>
    public static ShotListAnswer Plan(ShotQuestion question)
    {
        Check(question);
        var listed = ShotProgramme.All(question.LongestExposureSeconds).Select(p => (Programme: p, Shots: Shots(question, p)))
            .Select(x => (x.Programme, x.Shots, Seconds: x.Shots.Sum(s => s.Seconds))).ToList();
        var fitting = question.Minutes is double minutes ? listed.FindAll(x => x.Seconds <= 60 * minutes) : listed;
        if (fitting.Count == 0)
            throw Refuse.CannotTell("time-too-short",
                $"The shortest session that measures everything takes {Said.Duration(listed.Min(x => x.Seconds))}; {Said.Whole((long)question.Minutes!.Value)} min are too few: give more time, or take the bias frames and flats now and the darks later.");
        var (programme, shots, seconds) = question.Minutes is null ? fitting.MaxBy(x => (x.Programme.Temperatures * x.Programme.Exposures, x.Programme.Longest))
            : fitting.MaxBy(x => (x.Programme.Longest, x.Seconds));     // darks as long as the lights come first, then the most frames
        int frames = shots.Sum(s => s.Frames);
        double bytes = frames * (Math.Ceiling(2.0 * question.Width * question.Height / 2880) * 2880 + 5760);
        ShotAddition[] additions = question.Existing is { } existing ? [.. ShotAdditions.Of(question, existing)] : [];
        return new ShotListAnswer
        {
            Sentence = frames == 0 ? "Nothing is missing: characterise what you have."
                : $"Take {Said.Whole(frames)} frames in {Said.Duration(seconds)} ({Said.Bytes(bytes)}): {Counts(shots)}.",
            Reason = $"Darks of {Said.Whole(programme.DarkExposures.Count)} exposures up to {Said.Seconds(programme.Longest)} at {Said.Whole(programme.Temperatures)} temperatures give dark current and its law, bias pairs the read noise, flat pairs the gain."
                + (additions.Length > 0 ? $" Of single additions, {additions[0].What} brings most: {Gain(additions[0])}." : ""),
            Verdict = "answered",
            Quantities = new Dictionary<string, Measurement?>
            {
                ["totalFrames"] = new(frames, 0, "frames", shots.Count, "counted"),
                ["totalTime"] = new(seconds, 0.15 * seconds, "s", shots.Count, "exposure, read-out and settling; read-out and settling taken as good to 15 %"),
                ["diskSpace"] = new(bytes / 1e6, 0, "MB", shots.Count, "16-bit frames"),
            },
            Findings = programme.Longest < question.LongestExposureSeconds ?
                [new Finding("darks-shorter-than-lights", Severity.Warning, $"In this time the darks reach {Said.Seconds(programme.Longest)} only, not the {Said.Seconds(question.LongestExposureSeconds)} of the lights: hot pixels are then known less well.")] : [],
            Cautions = question.Cooled ? Cautions.ShotsCooled : Cautions.ShotsUncooled,
            RulesOfThumb = ["\"5-minute darks are typical\" (common practice, no source): take the exposures of your own lights instead."],
            Shots = shots,
            Additions = additions,
        };
    }

    internal static IReadOnlyList<double> Temperatures(ShotQuestion question, int count)
    {
        double low = question.Cooled ? Math.Ceiling(question.AmbientCelsius - question.MaximumDifference + question.Margin) : Math.Round(question.AmbientCelsius);
        double high = question.Cooled ? Math.Floor(question.AmbientCelsius) : Math.Max(RoomCelsius, low + 8);
        return [.. Enumerable.Range(0, count).Select(i => Math.Round(high + (low - high) * i / (count - 1))).Distinct()];
    }

    private static List<Shot> Shots(ShotQuestion question, ShotProgramme programme)
    {
        var shots = new List<Shot>();
        Add(shots, "bias", null, null, null, programme.Bias - Existing(question, FrameKind.Bias, null, null), question.OverheadSeconds, 0,
            "shortest exposure, covered: read noise, of every pixel with 8 or more");
        bool first = true;
        for (int level = 1; level <= programme.FlatLevels; level++)
        {
            if (level <= FlatPairs(question)) continue;
            bool white = level == programme.FlatLevels;          // full well is read beyond saturation, not below it
            Add(shots, "flat", null, null, white ? WhiteFlatPercent : Math.Round(90.0 * level / (programme.FlatLevels - 1)), 2, FlatSeconds + question.OverheadSeconds, 0, white
                ? "a pair exposed until it is evenly white: saturation and full well"
                : first ? "a pair under an even, dim light: gain and linearity; keep the light for all pairs, change the exposure" : "a pair under the same light, exposed longer");
            first = false;
        }
        foreach (double celsius in Temperatures(question, programme.Temperatures))
        {
            double settle = question.SettleSeconds;
            foreach (double t in programme.DarkExposures)
            {
                int before = shots.Count;
                Add(shots, "dark", t, celsius, null, programme.DarkFrames - Existing(question, FrameKind.Dark, t, celsius), t + question.OverheadSeconds, settle,
                    $"covered; {(settle > 0 ? Reaching(question, celsius) : "the same temperature")}");
                if (shots.Count > before) settle = 0;
            }
        }
        return shots;
    }

    private static void Add(List<Shot> shots, string kind, double? exposure, double? celsius, double? level, int frames, double each, double settle, string reason)
    {
        if (frames > 0) shots.Add(new Shot(kind, exposure, celsius, level, frames, settle + frames * each, reason));
    }

    private static string Reaching(ShotQuestion question, double celsius) => question.Cooled
        ? $"set the cooler to {Said.Celsius(celsius)} in steps and wait until it is steady"
        : celsius >= RoomCelsius - 1 ? $"in a room of about {Said.Celsius(celsius)}, after half an hour of running"
        : celsius <= question.AmbientCelsius + 1 ? "outside at night, after half an hour of running" : $"in a cool room or outside in the evening, near {Said.Celsius(celsius)}";

    private static int Existing(ShotQuestion question, FrameKind kind, double? exposure, double? celsius) => question.Existing is not { } inventory ? 0
        : inventory.Sets.Where(s => s.Kind == kind
            && (exposure is not double t || (s.ExposureSeconds is double e && Math.Abs(e - t) <= 0.25 * t))
            && (celsius is not double c || (s.TemperatureCelsius is double have && Math.Abs(have - c) <= SameTemperature)))
            .Select(s => s.Frames.Count).DefaultIfEmpty(0).Max();

    private static int FlatPairs(ShotQuestion question) => question.Existing?.Sets.Count(s => s.Kind == FrameKind.Flat && s.Frames.Count >= 2) ?? 0;

    private static string Counts(List<Shot> shots) => string.Join(", ", shots.GroupBy(s => s.Kind)
        .Select(g => $"{Said.Whole(g.Sum(s => s.Frames))} {(g.Key == "bias" ? "bias frames" : g.Key + "s")}"));

    private static string Gain(ShotAddition addition) => addition.Reduction >= 1 ? $"it makes the {Words(addition.Quantity)} measurable"
        : $"the uncertainty of the {Words(addition.Quantity)} shrinks by {Said.Percent(addition.Reduction)}";

    private static string Words(string quantity) => quantity switch { "readNoise" => "read noise", "darkCurrent" => "dark current", "doublingTemperature" => "doubling temperature", _ => quantity };

    private static void Check(ShotQuestion question)
    {
        if (question.Minutes is double minutes) Refuse.UnlessPositive(minutes, "minutes-not-positive", "time", "min");
        Refuse.UnlessPositive(question.LongestExposureSeconds, "exposure-not-positive", "longest exposure", "s");
        if (question.LongestExposureSeconds > LongestExposure)
            throw Refuse.BadArgument("exposure-too-long", $"The longest exposure must be at most a day ({Said.Seconds(LongestExposure)}): give that of your lights.");
        Refuse.UnlessCount(question.Width, 1, "size-not-positive", "pixels across a frame");
        Refuse.UnlessCount(question.Height, 1, "size-not-positive", "pixels along a frame");
        if (!(question.AmbientCelsius is > -90 and < 60)) throw Refuse.BadArgument("ambient-out-of-range", $"An ambient temperature of {Said.Number(question.AmbientCelsius)} °C is not between −90 °C and 60 °C.");
        if (question.Cooled && !(question.MaximumDifference > question.Margin)) throw Refuse.CoolerTooWeak(question.MaximumDifference, question.Margin);
        if (question.Cooled && question.MaximumDifference > LargestDifference)
            throw Refuse.BadArgument("difference-too-large", $"No cooler of such a camera reaches {Said.Number(question.MaximumDifference)} °C below the ambient: give at most {Said.Number(LargestDifference)} °C.");
    }
}
