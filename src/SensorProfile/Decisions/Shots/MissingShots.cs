using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.Shots;

/// <summary>
/// The frames that an existing session still lacks, at the temperatures and exposures it already has: any set that
/// serves a measurement counts.
/// </summary>
/// <remarks>
/// The minimum of a session as <see cref="MissingMeasurements"/> counts it: 8 bias frames, 6 flat pairs, darks of 3
/// exposures at 3 temperatures.
/// </remarks>
internal static class MissingShots
{
    private const int Bias = 16,
        Pair = 2;
    private const double LongEnough = 0.75; // of the lights: hot pixels are then known well enough

    /// <summary>
    /// Units of shots that belong together, in the order to take them; empty when nothing is missing.
    /// </summary>
    /// <param name="question">The camera, and the longest exposure when stated.</param>
    /// <param name="sets">Sets of one mode.</param>
    /// <param name="longest">Longest dark, s.</param>
    internal static List<List<PlannedShot>> Find(ShotQuestion question, IReadOnlyList<FrameSet> sets, double longest)
    {
        List<List<PlannedShot>> units =
        [
            OfBias(question, sets),
            OfFlats(question, sets),
            .. OfDarks(question, sets, longest),
        ];
        units.RemoveAll(unit => unit.Count == 0);
        return units;
    }

    private static List<PlannedShot> OfBias(ShotQuestion question, IReadOnlyList<FrameSet> sets)
    {
        int there = sets.Where(s => s.Kind == FrameKind.Bias).Select(s => s.Frames.Count).DefaultIfEmpty(0).Max();
        return there >= MissingMeasurements.BiasForPixelNoise ? [] : [ShotList.BiasShot(question, Bias)];
    }

    private static List<PlannedShot> OfFlats(ShotQuestion question, IReadOnlyList<FrameSet> sets)
    {
        int levels = sets.Where(s => s.Kind == FrameKind.Flat && s.Frames.Count >= Pair)
            .Select(s => (s.ExposureSeconds, s.Label))
            .Distinct()
            .Count();
        return ShotList.FlatShots(question, MissingMeasurements.FlatLevels, levels);
    }

    private static IEnumerable<List<PlannedShot>> OfDarks(
        ShotQuestion question,
        IReadOnlyList<FrameSet> sets,
        double longest
    )
    {
        var levels = TemperatureGroup
            .Gather(sets.Where(s => s.Kind == FrameKind.Dark), InventoryOptions.DefaultTemperatureTolerance)
            .Where(l => l.TemperatureCelsius is not null)
            .Select(l => (Celsius: l.TemperatureCelsius!.Value, Exposures: Exposures(l.Sets)))
            .OrderByDescending(l => l.Exposures.Length)
            .ToList();
        List<double> complete =
        [
            .. levels.Where(l => l.Exposures.Length >= MissingMeasurements.DarkExposures).Select(l => l.Celsius),
        ];
        int wanted = MissingMeasurements.Temperatures - complete.Count;
        SessionDesign design = SessionDesign.Read(sets, (long)question.Width * question.Height);
        double[] ideal = [longest / 10, longest / 3, longest];
        foreach (var level in levels.Where(l => !complete.Contains(l.Celsius)).Take(Math.Max(wanted, 0)))
        {
            wanted--;
            complete.Add(level.Celsius);
            double[] lacking =
            [
                .. ideal
                    .OrderByDescending(t =>
                        level.Exposures.Select(e => Math.Abs(Math.Log(e / t))).DefaultIfEmpty(9).Min()
                    )
                    .Take(MissingMeasurements.DarkExposures - level.Exposures.Length)
                    .Order(),
            ];
            design = design.WithDarks(level.Celsius, Frames(lacking));
            yield return AsBefore(
                question,
                ShotList.DarkShots(question, level.Celsius, lacking, SettlingFrames.EachDark)
            );
        }
        for (; wanted > 0; wanted--)
        {
            double next = MostTelling(question, design, complete, ideal);
            complete.Add(next);
            design = design.WithDarks(next, Frames(ideal));
            yield return ShotList.DarkShots(question, next, ideal, SettlingFrames.EachDark);
        }
        if (
            question.LongestExposureSeconds is double lights
            && complete.Count > 0
            && !sets.Any(s =>
                s.Kind == FrameKind.Dark && s.Frames.Count >= Pair && s.ExposureSeconds >= LongEnough * lights
            )
            && levels.Count >= MissingMeasurements.Temperatures
        )
            yield return ShotList.DarkShots(
                question,
                complete.Order().ElementAt(complete.Count / 2),
                [lights],
                SettlingFrames.EachDark
            );
    }

    private static double[] Exposures(IReadOnlyList<FrameSet> sets) =>
        [
            .. sets.Where(s => s.Frames.Count >= Pair)
                .Select(s => s.ExposureSeconds)
                .OfType<double>()
                .Where(t => t > 0)
                .Distinct(),
        ];

    private static (double Seconds, int Frames)[] Frames(double[] exposures) =>
        [.. exposures.Select(t => (t, SettlingFrames.EachDark))];

    // An uncooled sensor is warmer than the air around it by an unknown amount: the existing darks tell where to go.
    private static List<PlannedShot> AsBefore(ShotQuestion question, List<PlannedShot> shots)
    {
        if (!question.Cooled && shots.Count > 0)
            shots[0] = shots[0] with { Purpose = ShotPurpose.AsBefore };
        return shots;
    }

    /// <summary>
    /// The temperature within reach at which darks say most about the doubling temperature; the one farthest from the
    /// existing ones while none says anything yet.
    /// </summary>
    private static double MostTelling(
        ShotQuestion question,
        SessionDesign design,
        List<double> have,
        double[] exposures
    )
    {
        (double Celsius, double? Doubt) best = ShotList
            .Temperatures(question, 7)
            .Where(t => have.TrueForAll(h => Math.Abs(h - t) >= ShotAdditions.WorthAnother))
            .Select(t => (t, design.WithDarks(t, Frames(exposures)).DoublingTemperature))
            .Where(t => t.DoublingTemperature is not null)
            .OrderBy(t => t.DoublingTemperature)
            .FirstOrDefault();
        return best.Doubt is null ? Farthest(question, have) : best.Celsius;
    }

    /// <summary>The temperature within the camera's reach that lies farthest from those it has.</summary>
    private static double Farthest(ShotQuestion question, List<double> have)
    {
        IReadOnlyList<double> reachable = ShotList.Temperatures(question, 7);
        return have.Count == 0 ? reachable[^1] : reachable.MaxBy(t => have.Min(h => Math.Abs(h - t)));
    }
}
