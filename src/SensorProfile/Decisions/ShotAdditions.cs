using SensorProfile.Frames;

namespace SensorProfile.Decisions;

/// <summary>What single additions to an existing session would bring, from the design of the session alone.</summary>
/// <remarks>
/// Read noise: uncertainty ∝ 1/√(frames − 1). Gain: ∝ 1/√(flat pairs). Dark current at one temperature: slope of level against exposure,
/// σ/√Σ n(t − t̄)². Doubling temperature: weighted slope of ln I against T, the weights from those slopes and a dark current that doubles every 6 °C
/// from 0.006 e-/px/s at −10 °C, with a pedestal good to 0.3 e- per frame and at least 1 % for every temperature: a camera of that kind, not yours.
/// </remarks>
internal static class ShotAdditions
{
    private const double PedestalElectrons = 0.3, RateAtMinusTen = 0.006, Doubling = 6, LeastRelative = 0.01;
    private const int AddedBias = 16, AddedDarks = 4;

    internal static IEnumerable<ShotAddition> Of(ShotQuestion question, Inventory inventory)
    {
        var additions = new List<ShotAddition> { Bias(question, inventory), Flats(question, inventory) };
        List<DarkDesign> darks = [.. Designs(inventory)];
        IEnumerable<double> fresh = ShotList.Temperatures(question, 2).Where(celsius => !darks.Exists(d => Same(d.Celsius, celsius)));
        foreach (double celsius in fresh.Concat(darks.Select(d => d.Celsius)))
            additions.AddRange(Darks(question, darks, celsius));
        return additions.Where(a => a.Reduction > 0.005).OrderByDescending(a => a.Reduction).ThenBy(a => a.Seconds);
    }

    private static ShotAddition Bias(ShotQuestion question, Inventory inventory)
    {
        int have = inventory.Sets.Where(s => s.Kind == FrameKind.Bias).Select(s => s.Frames.Count).DefaultIfEmpty(0).Max();
        double reduction = have < 2 ? 1 : 1 - Math.Sqrt((have - 1.0) / (have + AddedBias - 1.0));
        return new ShotAddition($"{AddedBias} more bias frames", "readNoise", reduction, AddedBias * question.OverheadSeconds);
    }

    private static ShotAddition Flats(ShotQuestion question, Inventory inventory)
    {
        int have = inventory.Sets.Where(s => s.Kind == FrameKind.Flat).Sum(s => s.Frames.Count / 2);
        int add = Math.Max(MissingMeasurements.FlatLevels - have, 4);
        double reduction = have < 2 ? 1 : 1 - Math.Sqrt((double)have / (have + add));
        return new ShotAddition($"{add} more flat pairs", "gain", reduction, 2 * add * (1 + question.OverheadSeconds));
    }

    private static IEnumerable<ShotAddition> Darks(ShotQuestion question, List<DarkDesign> darks, double celsius)
    {
        double longest = question.LongestExposureSeconds;
        (double, int)[] frames = darks.Exists(d => Same(d.Celsius, celsius)) ? [(longest, AddedDarks)] : [(longest / 10, AddedDarks), (longest / 3, AddedDarks), (longest, AddedDarks)];
        List<DarkDesign> after = [.. darks.Where(d => !Same(d.Celsius, celsius))];
        DarkDesign? before = darks.FirstOrDefault(d => Same(d.Celsius, celsius));
        var added = new DarkDesign(celsius, [.. before?.Exposures ?? [], .. frames]);
        after.Add(added);
        double seconds = frames.Sum(f => f.Item2 * (f.Item1 + question.OverheadSeconds)) + question.SettleSeconds;
        string what = $"{Said.Whole(frames.Sum(f => f.Item2))} darks up to {Said.Seconds(longest)} at {Said.Celsius(Math.Round(2 * celsius) / 2)}";
        yield return new ShotAddition(what, "doublingTemperature", Reduction(LawVariance(darks), LawVariance(after)), seconds);
        if (before is not null)
            yield return new ShotAddition(what, "darkCurrent", Reduction(before.SlopeVariance, added.SlopeVariance), seconds);
    }

    private static double Reduction(double before, double after) =>
        double.IsFinite(before) ? 1 - Math.Sqrt(after / before) : double.IsFinite(after) ? 1 : 0;

    /// <summary>The darks that exist, grouped by temperature; a group spans less than what counts as one temperature.</summary>
    private static IEnumerable<DarkDesign> Designs(Inventory inventory)
    {
        var groups = new List<List<FrameSet>>();
        foreach (FrameSet set in inventory.Sets.Where(s => s.Kind == FrameKind.Dark && s.TemperatureCelsius is not null && s.ExposureSeconds is > 0).OrderBy(s => s.TemperatureCelsius))
            if (groups.Count > 0 && Same(set.TemperatureCelsius!.Value, groups[^1][0].TemperatureCelsius!.Value)) groups[^1].Add(set);
            else groups.Add([set]);
        return groups
            .Select(g => new DarkDesign(g.Average(s => s.TemperatureCelsius!.Value), [.. g.Select(s => (s.ExposureSeconds!.Value, s.Frames.Count))]))
            .Where(d => double.IsFinite(d.SlopeVariance));
    }

    private static bool Same(double celsius, double other) => Math.Abs(celsius - other) < ShotList.SameTemperature;

    /// <summary>Variance of the slope of ln I against T; infinite with fewer than two temperatures.</summary>
    private static double LawVariance(List<DarkDesign> designs)
    {
        if (designs.Count < 2) return double.PositiveInfinity;
        double[] weights = [.. designs.Select(d => 1 / (d.SlopeVariance / Math.Pow(RateAtMinusTen * Math.Pow(2, (d.Celsius + 10) / Doubling), 2) + LeastRelative * LeastRelative))];
        double mean = designs.Zip(weights, (d, w) => d.Celsius * w).Sum() / weights.Sum();
        return 1 / designs.Zip(weights, (d, w) => w * (d.Celsius - mean) * (d.Celsius - mean)).Sum();
    }

    private sealed record DarkDesign(double Celsius, IReadOnlyList<(double Seconds, int Frames)> Exposures)
    {
        /// <summary>Variance of the dark rate, (e-/px/s)²; infinite with one exposure.</summary>
        internal double SlopeVariance
        {
            get
            {
                double frames = Exposures.Sum(e => e.Frames), mean = Exposures.Sum(e => e.Frames * e.Seconds) / frames;
                return PedestalElectrons * PedestalElectrons / Exposures.Sum(e => e.Frames * (e.Seconds - mean) * (e.Seconds - mean));
            }
        }
    }
}
