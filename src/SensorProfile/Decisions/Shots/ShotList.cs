using SensorProfile.Frames;
using SensorProfile.NoiseModel;

namespace SensorProfile.Decisions.Shots;

/// <summary>The shot list for characterising a camera in a given time, and what existing frames still lack.</summary>
public static class ShotList
{
    private const double WhiteFlatPercent = 130;
    private const double FlatSeconds = 1; // a dim, even light gives a flat in about this time
    internal const double SameTemperature = 1; // darks this close count as one temperature, °C
    internal const double UsualLongest = 300; // s
    private const double RoomCelsius = 22;

    /// <summary>
    /// The most thorough list that fits the time; with existing frames, what they still lack and what more would bring.
    /// </summary>
    /// <param name="question">Camera, cooler and time.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the time is too short for any
    /// characterisation.</exception>
    public static ShotListAnswer Find(ShotQuestion question)
    {
        ShotGuard.Check(question);
        return question.Existing is null ? Afresh(question) : ShotsToAdd.Find(question);
    }

    private static ShotListAnswer Afresh(ShotQuestion question)
    {
        double longest = question.LongestExposureSeconds ?? UsualLongest;
        var listed = ShotProgramme
            .All(longest)
            .Select(p => (Programme: p, Shots: Shots(question, p)))
            .Select(x => (x.Programme, x.Shots, Seconds: x.Shots.Sum(s => s.Seconds)))
            .ToList();
        var fitting = question.Minutes is double minutes ? listed.FindAll(x => x.Seconds <= 60 * minutes) : listed;
        if (fitting.Count == 0)
            throw ShotGuard.TooShort(
                "The shortest session that measures everything",
                listed.Min(x => x.Seconds),
                question.Minutes!.Value,
                "give more time, or take the bias frames and flats now and the darks later"
            );
        var (programme, shots, _) = question.Minutes is null
            ? fitting.MaxBy(x => (x.Programme.Temperatures * x.Programme.Exposures, x.Programme.Longest))
            : fitting.MaxBy(x => (x.Programme.Longest, x.Seconds)); // darks as long as the lights come first, then the most frames
        var none = new SessionDesign(0, 0, [], (long)question.Width * question.Height);
        return Answer(question, shots) with
        {
            Darks = new ListedDarks(programme.DarkExposures.Count, programme.Longest, programme.Temperatures),
            Findings =
                programme.Longest < longest
                    ?
                    [
                        new Finding(
                            FindingCodes.DarksShorterThanLights,
                            Severity.Warning,
                            $"In this time the darks reach only {Plain.Seconds(programme.Longest)}, not the "
                                + $"{Plain.Seconds(longest)} of the lights, so hot pixels are known less well."
                        ),
                    ]
                    : [],
            Expected = ShotExpectation.Predict(none, none.With(shots)),
        };
    }

    /// <summary>The answer that a list of shots gives, without its findings.</summary>
    internal static ShotListAnswer Answer(ShotQuestion question, IReadOnlyList<PlannedShot> shots)
    {
        int frames = shots.Sum(s => s.Frames);
        double seconds = shots.Sum(s => s.Seconds),
            bytes = frames * (Math.Ceiling(2.0 * question.Width * question.Height / 2880) * 2880 + 5760);
        return new ShotListAnswer
        {
            Cooled = question.Cooled,
            Quantities = new Dictionary<string, Measurement?>
            {
                [QuantityNames.TotalFrames] = new(frames, 0, "frames", shots.Count, "counted"),
                [QuantityNames.TotalTime] = new(
                    seconds,
                    0.15 * seconds,
                    "s",
                    shots.Count,
                    "exposure, read-out and settling; read-out and settling taken as good to 15 %"
                ),
                [QuantityNames.DiskSpace] = new(bytes / 1e6, 0, "MB", shots.Count, "16-bit frames"),
            },
            Shots = shots,
        };
    }

    internal static IReadOnlyList<double> Temperatures(ShotQuestion question, int count)
    {
        double low = question.Cooled
            ? Math.Ceiling(question.AmbientCelsius - question.MaximumDifference + question.Margin)
            : Math.Round(question.AmbientCelsius);
        double high = question.Cooled ? Math.Floor(question.AmbientCelsius) : Math.Max(RoomCelsius, low + 8);
        return
        [
            .. Enumerable.Range(0, count).Select(i => Math.Round(high + (low - high) * i / (count - 1))).Distinct(),
        ];
    }

    private static List<PlannedShot> Shots(ShotQuestion question, ShotProgramme programme) =>
        [
            BiasShot(question, programme.Bias),
            .. FlatShots(question, programme.FlatLevels, 0),
            .. Temperatures(question, programme.Temperatures)
                .SelectMany(celsius => DarkShots(question, celsius, programme.DarkExposures, programme.DarkFrames)),
        ];

    internal static PlannedShot BiasShot(ShotQuestion question, int frames) =>
        new(FrameKind.Bias, null, null, null, frames, frames * question.OverheadSeconds)
        {
            Purpose = ShotPurpose.ReadNoise,
        };

    /// <summary>A pair at each level from dim to white, without those that exist.</summary>
    internal static List<PlannedShot> FlatShots(ShotQuestion question, int levels, int existing)
    {
        var shots = new List<PlannedShot>();
        for (int level = existing + 1; level <= levels; level++)
        {
            bool white = level == levels; // full well is read beyond saturation, not below it
            shots.Add(
                new PlannedShot(
                    FrameKind.Flat,
                    null,
                    null,
                    white ? WhiteFlatPercent : Math.Round(90.0 * level / (levels - 1)),
                    2,
                    2 * (FlatSeconds + question.OverheadSeconds)
                )
                {
                    Purpose =
                        white ? ShotPurpose.White
                        : shots.Count == 0 ? ShotPurpose.DimLight
                        : ShotPurpose.SameLight,
                }
            );
        }
        return shots;
    }

    /// <summary>Darks of several exposures at one temperature; the first waits until it is reached.</summary>
    internal static List<PlannedShot> DarkShots(
        ShotQuestion question,
        double celsius,
        IReadOnlyList<double> exposures,
        int frames
    ) =>
        [
            .. exposures.Select(
                (t, i) =>
                    new PlannedShot(
                        FrameKind.Dark,
                        t,
                        celsius,
                        null,
                        frames,
                        (i == 0 ? question.SettleSeconds : 0) + frames * (t + question.OverheadSeconds)
                    )
                    {
                        Purpose =
                            i > 0 ? ShotPurpose.SameTemperature
                            : question.SettleSeconds > 0 ? Reaching(question, celsius)
                            : ShotPurpose.ThisTemperature,
                    }
            ),
        ];

    private static ShotPurpose Reaching(ShotQuestion question, double celsius) =>
        question.Cooled ? ShotPurpose.SetCooler
        : celsius >= RoomCelsius - 1 ? ShotPurpose.InRoom
        : celsius <= question.AmbientCelsius + 1 ? ShotPurpose.OutsideAtNight
        : ShotPurpose.CoolPlace;
}
