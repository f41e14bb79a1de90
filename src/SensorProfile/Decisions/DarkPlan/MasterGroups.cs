using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Splits the lights of one exposure and mode into the groups that need the fewest darks.</summary>
/// <remarks>
/// The accepted spread f² is shared: at most half of it goes to the mismatch, the rest to the number of darks. A master
/// that serves the share a of a stack adds a²·N_d²/n to its variance; with n in proportion to a, the sum over masters
/// is N_d²/n_whole, so splitting a stack costs no extra darks except through rounding and
/// <see cref="PlanQuestion.MinFrames"/>. The groups are found exactly, by dynamic programming over the sorted
/// temperatures.
/// </remarks>
internal sealed class MasterGroups
{
    private static readonly BindingCause[] cheapestFirst =
    [
        BindingCause.Glow,
        BindingCause.Typical,
        BindingCause.Level,
        BindingCause.HotPixels,
    ];

    private readonly IReadOnlyList<SensorModel> sensors; // one, or one a colour: a master serves all of them
    private readonly PlanQuestion question;
    private readonly double sky;
    private readonly LightSlice[] slices;
    private readonly double[] candidates;
    private readonly double? atEnd; // temperature at the end of a cooling night, °C

    // [slice, candidate]: largest load when within all limits, else null; a candidate behind one that does not fit
    // counts as not fitting
    private readonly double?[,] loads;

    /// <summary>A master this close to the last temperature can be shot when the lights are done, °C.</summary>
    internal const double EndOfNight = 1;

    /// <param name="sensors">The camera, or each of its colours where they are scaled separately.</param>
    /// <param name="question">Limits and the smallest number of frames.</param>
    /// <param name="sky">e-/px/s.</param>
    /// <param name="lights">The slices of all stacks of one mode and exposure.</param>
    internal MasterGroups(
        IReadOnlyList<SensorModel> sensors,
        PlanQuestion question,
        double sky,
        IEnumerable<LightSlice> lights
    )
    {
        (this.sensors, this.question, this.sky) = (sensors, question, sky);
        slices = [.. lights.OrderBy(s => s.Celsius)];
        candidates = [.. Candidates(slices)];
        if (
            !question.Cooled
            && slices[0].Plan.EndCelsius is double end
            && end < slices[0].Plan.StartCelsius
            && slices[0].Celsius <= end + EndOfNight
        )
            atEnd = end;
        loads = new double?[slices.Length, candidates.Length];
        for (int s = 0; s < slices.Length; s++)
            Load(s);
    }

    /// <inheritdoc cref="MasterGroups(IReadOnlyList{SensorModel}, PlanQuestion, double, IEnumerable{LightSlice})"/>
    internal MasterGroups(SensorModel sensor, PlanQuestion question, double sky, IEnumerable<LightSlice> lights)
        : this([sensor], question, sky, lights) { }

    internal IReadOnlyList<LightSlice> Slices => slices;

    /// <summary>The groups with the fewest darks in all, and of those the fewest masters; coldest first.</summary>
    internal IReadOnlyList<MasterGroup> Fewest() =>
        Best(
            (a, b) =>
                a.Frames != b.Frames ? a.Frames < b.Frames
                : a.Masters != b.Masters ? a.Masters < b.Masters
                : a.Load < b.Load
        );

    /// <summary>
    /// The fewest groups that serve every light, and of those the fewest darks: the smallest cover of the temperatures
    /// by intervals.
    /// </summary>
    internal IReadOnlyList<MasterGroup> FewestMasters() =>
        Best(
            (a, b) =>
                a.Masters != b.Masters ? a.Masters < b.Masters
                : a.Frames != b.Frames ? a.Frames < b.Frames
                : a.Load < b.Load
        );

    private List<MasterGroup> Best(Func<Course, Course, bool> better)
    {
        var best = new Course[slices.Length + 1];
        for (int end = 1; end <= slices.Length; end++)
        {
            best[end] = new Course(double.PositiveInfinity, int.MaxValue, 0, null);
            for (int first = end - 1; first >= 0; first--)
            {
                if (BestGroup(first, end - first) is not { } group)
                    break; // a wider group cannot fit either
                if (double.IsInfinity(best[first].Frames))
                    continue;
                var total = new Course(
                    best[first].Frames + group.Frames,
                    best[first].Masters + 1,
                    Math.Max(best[first].Load, group.Load),
                    group
                );
                if (better(total, best[end]))
                    best[end] = total;
            }
            if (best[end].Last is null)
                throw Refuse.CannotTell(
                    FindingCodes.PixelsFull,
                    $"No dark serves lights of {Plain.Seconds(slices[end - 1].Plan.ExposureSeconds)} at "
                        + $"{Plain.Celsius(slices[end - 1].Celsius)}: by the profile, their pixels are full or their noise "
                        + "is unknown. Shorten the lights, cool more, or characterise the camera again."
                );
        }
        var groups = new List<MasterGroup>();
        for (int end = slices.Length; end > 0; end = best[end].Last!.First)
            groups.Insert(0, best[end].Last!);
        return groups;
    }

    private readonly record struct Course(double Frames, int Masters, double Load, MasterGroup? Last);

    /// <summary>Darks that a group needs with another (drawn) camera and sky.</summary>
    internal double FramesOf(MasterGroup group, SensorModel drawn, double drawnSky) =>
        Frames(group.First, group.Count, group.Celsius, group.Load, drawn, drawnSky);

    private MasterGroup? BestGroup(int first, int count)
    {
        MasterGroup? best = null;
        for (int c = 0; c < candidates.Length; c++)
        {
            double load = 0;
            // the coldest master is for the end of the night
            bool fits = first > 0 || atEnd is null || candidates[c] <= atEnd + EndOfNight;
            for (int s = first; s < first + count && fits; s++)
            {
                fits = loads[s, c] is not null;
                load = Math.Max(load, loads[s, c] ?? 0);
            }
            if (!fits)
                continue;
            var group = new MasterGroup(
                first,
                count,
                candidates[c],
                sensors.Max(sensor => Frames(first, count, candidates[c], load, sensor, sky)),
                load
            );
            if (best is null || group.Frames < best.Frames || (group.Frames == best.Frames && group.Load < best.Load))
                best = group;
        }
        return best;
    }

    private double Frames(int first, int count, double celsius, double load, SensorModel model, double drawnSky)
    {
        double budget = Square(question.Limits.SpreadFactor) * (1 - load * load / 2),
            most = question.MinFrames;
        foreach (IGrouping<PlannedLights, LightSlice> stack in slices.Skip(first).Take(count).GroupBy(s => s.Plan))
        {
            double dark = PixelNoise.OfLight(model, 0, model.Law.RateAt(celsius) * stack.Key.ExposureSeconds).Random;
            double light = stack.Average(s =>
                PixelNoise
                    .OfLight(
                        model,
                        drawnSky * s.Plan.ExposureSeconds,
                        model.Law.RateAt(s.Celsius) * s.Plan.ExposureSeconds
                    )
                    .Random
            );
            double whole = dark / light * stack.Key.Lights / stack.Key.DitherPositions / budget;
            most = Math.Max(most, Math.Ceiling(whole * stack.Sum(s => s.Share) - 1e-9));
        }
        return most;
    }

    /// <summary>Goes from the slice's own temperature outwards until a limit is reached.</summary>
    private void Load(int slice)
    {
        PlannedLights plan = slices[slice].Plan;
        var stack = new StackConditions
        {
            Sky = new Measurement(sky, 0, "e-/px/s", 1, "given"),
            ExposureSeconds = plan.ExposureSeconds,
            TemperatureCelsius = slices[slice].Celsius,
            Lights = plan.Lights,
            DitherPositions = plan.DitherPositions,
            Rejection = plan.Rejection,
        };
        LossLimits half = question.Limits with
        {
            NoiseLoss = Math.Sqrt(1 + Square(question.Limits.SpreadFactor) / 2) - 1,
        };
        DarkMismatch[] mismatches = [.. sensors.Select(sensor => new DarkMismatch(sensor, stack, sky, half))];
        int own = Array.IndexOf(candidates, slices[slice].Celsius);
        for (
            int c = own;
            c < candidates.Length && (loads[slice, c] = LoadOf(mismatches, plan, candidates[c])) is not null;
            c++
        ) { }
        for (int c = own - 1; c >= 0 && (loads[slice, c] = LoadOf(mismatches, plan, candidates[c])) is not null; c--)
        { }
    }

    private static double? LoadOf(DarkMismatch[] mismatches, PlannedLights plan, double celsius)
    {
        double largest = 0;
        foreach (BindingCause cause in cheapestFirst)
        foreach (DarkMismatch mismatch in mismatches)
        {
            largest = Math.Max(largest, mismatch.Load(cause, celsius, plan.ExposureSeconds, scaled: false) ?? 0);
            if (largest > 1)
                return null;
        }
        return largest;
    }

    private static IEnumerable<double> Candidates(LightSlice[] slices)
    {
        double low = slices[0].Celsius,
            high = slices[^1].Celsius;
        IEnumerable<double> halves = Enumerable
            .Range(0, (int)(2 * (high - low)) + 1)
            .Select(i => Math.Ceiling(2 * low) / 2 + 0.5 * i)
            .Where(t => t <= high);
        return slices.Select(s => s.Celsius).Concat(halves).Distinct().Order();
    }

    private static double Square(double x) => x * x;
}
