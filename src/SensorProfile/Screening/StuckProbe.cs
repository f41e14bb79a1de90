using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using static System.FormattableString;

namespace SensorProfile.Screening;

/// <summary>
/// A thermometer that reads one value in every dark although the dark signal shows that the nights, or the hours of one
/// night, differed in temperature: its readings are not believed.
/// </summary>
/// <remarks>
/// A cooler that holds −10.0 °C also reads so in every frame; only the signal tells the two apart. There are two tests,
/// each immune to another kind of drift: the rise of the level with exposure, which is insensitive to a black level
/// that changes from night to night; and the spread of the brightest pixels above the median (0.1 % of them), which
/// needs only one exposure. A test contradicts the reading where two nights differ by more than <see cref="MinFactor"/>
/// (2 °C at a doubling of 6 °C) and by more than <see cref="Sigmas"/> standard errors of their frames. Within a night,
/// the first and the last third of the darks of one exposure are compared, by the second test alone: a creeping level
/// is not warming.
/// </remarks>
internal static class StuckProbe
{
    private const double MinFactor = 1.26;
    private const double Sigmas = 5;
    private const int MinFrames = 2;
    private const int Parts = 3; // of a night; the part between the first and the last is left out

    /// <summary>The sets; darks whose reading is contradicted are split by night and lose their temperature.</summary>
    public static IReadOnlyList<FrameSet> Check(
        IReadOnlyList<FrameSet> sets,
        IReadOnlyDictionary<string, ScreenedFrame> looked,
        int codeStep,
        FindingsLog log
    )
    {
        HashSet<FrameSet> doubted = new(ReferenceEqualityComparer.Instance);
        foreach (
            IGrouping<double, FrameSet> level in sets.Where(s => s.Kind == FrameKind.Dark && OneReading(s) is not null)
                .GroupBy(s => OneReading(s)!.Value)
        )
        {
            ScreenedFrame[][] nights = Nights([.. level], looked);
            double? between = Contradiction([.. level], nights, codeStep),
                within = between is null ? WithinANight([.. level], nights, codeStep) : null;
            if ((between ?? within) is not { } factor)
                continue;
            doubted.UnionWith(level);
            log.Add(
                FindingCodes.TemperatureContradicted,
                Severity.Warning,
                Invariant($"The sensor temperature reads {level.Key:0.##} °C in every dark of ")
                    + (
                        between is null
                            ? "a night, but during it the dark signal changes by a factor of "
                            : "several nights, but the dark signal of these nights differs by a factor of "
                    )
                    + Invariant($"{factor:0.0#}: the thermometer is stuck, or light leaked in. The readings were ")
                    + "ignored; dark current is given night by night.",
                [.. level.SelectMany(s => s.Frames).Select(f => f.Name)]
            );
        }
        return doubted.Count == 0 ? sets : [.. sets.SelectMany(s => doubted.Contains(s) ? ByNight(s) : [s])];
    }

    private static double? OneReading(FrameSet set) =>
        set.Frames[0].TemperatureCelsius is { } first
        // what was typed in is no probe's: SilentNights judges it
        && set.Frames.All(f => f.TemperatureCelsius == first && f.TemperatureOrigin == TemperatureOrigin.Header)
            ? first
            : null;

    private static IEnumerable<FrameSet> ByNight(FrameSet set) =>
        NightSplit
            .Split(set.Frames)
            .Select(night =>
                set with
                {
                    TemperatureCelsius = null,
                    Frames = [.. night.Select(f => f with { TemperatureCelsius = null })],
                }
            );

    private static ScreenedFrame[][] Nights(FrameSet[] sets, IReadOnlyDictionary<string, ScreenedFrame> looked) =>
        [
            .. NightSplit
                .Split([.. sets.SelectMany(s => s.Frames).Order(FrameOrder.ByTimeThenName)])
                .Select(night => night.Where(f => looked.ContainsKey(f.Name)).Select(f => looked[f.Name]).ToArray())
                .Where(night => night.Length >= MinFrames),
        ];

    /// <summary>
    /// The factor by which the dark signal changes during a night; null when the reading may be true.
    /// </summary>
    private static double? WithinANight(FrameSet[] sets, ScreenedFrame[][] nights, int codeStep)
    {
        double? largest = null;
        foreach (double? seconds in sets.Select(s => s.ExposureSeconds).Distinct())
        foreach (ScreenedFrame[] night in nights)
        {
            ScreenedFrame[] alike =
            [
                .. night.Where(f => f.Frame is { StartUtc: not null } && f.Frame.ExposureSeconds == seconds),
            ];
            int part = alike.Length / Parts;
            if (part < MinFrames)
                continue;
            // noise of a frame from its neighbours in time, so that a drift does not count as scatter
            double[] bright = [.. alike.Select(f => f.Channels.Average(c => c.BrightSpread))];
            double scatter = Math.Sqrt(
                bright.Zip(bright.Skip(1), (a, b) => (a - b) * (a - b)).Sum() / (2 * (bright.Length - 1))
            );
            double doubt =
                Math.Max(scatter, codeStep) * Probability.CoverageWidening(bright.Length - 1) / Math.Sqrt(part);
            if (Differ([(bright[..part].Average(), doubt), (bright[^part..].Average(), doubt)]) is { } factor)
                largest = Math.Max(largest ?? 0, factor);
        }
        return largest;
    }

    /// <summary>The factor by which the nights differ; null when nothing contradicts the reading.</summary>
    private static double? Contradiction(FrameSet[] sets, ScreenedFrame[][] nights, int codeStep)
    {
        if (nights.Length < 2)
            return null;
        List<double> factors = [];
        if (Differ([.. nights.Select(n => Rise(n, codeStep)).OfType<(double, double)>()]) is { } byLevel)
            factors.Add(byLevel);
        foreach (double? seconds in sets.Select(s => s.ExposureSeconds).Distinct())
            if (
                Differ([
                    .. nights
                        .Select(n => n.Where(f => f.Frame.ExposureSeconds == seconds).ToArray())
                        .Where(n => n.Length >= MinFrames)
                        .Select(n => Brightest(n, codeStep)),
                ]) is
                { } byPixels
            )
                factors.Add(byPixels);
        return factors.Count == 0 ? null : factors.Max();
    }

    private static double? Differ((double Value, double Uncertainty)[] nights)
    {
        (double Value, double Uncertainty)[] known = [.. nights.Where(n => n.Value > 0)];
        if (known.Length < 2)
            return null;
        (double Value, double Uncertainty) low = known.MinBy(n => n.Value),
            high = known.MaxBy(n => n.Value);
        return
            high.Value > MinFactor * low.Value
            && high.Value - low.Value > Sigmas * double.Hypot(low.Uncertainty, high.Uncertainty)
            ? high.Value / low.Value
            : null;
    }

    // Slope in ADU/s, with the scatter of the levels about the line; at least half a code, by which black levels creep.
    private static (double, double)? Rise(ScreenedFrame[] night, int codeStep)
    {
        ScreenedFrame[] timed = [.. night.Where(f => f.Frame.ExposureSeconds is not null)];
        double[] seconds = [.. timed.Select(f => f.Frame.ExposureSeconds!.Value)];
        if (seconds.Distinct().Count() < 2)
            return null;
        double[] levels = [.. timed.Select(f => f.Level)];
        double rounding = timed.Max(f => f.Channels.Max(c => c.RoundingDoubt));
        StraightLine line = StraightLine.Fit(seconds, levels);
        double scatter = Math.Sqrt(
            line.DegreesOfFreedom > 0
                ? seconds.Select((s, i) => Math.Pow(levels[i] - line.Intercept - line.Slope * s, 2)).Sum()
                    / line.DegreesOfFreedom
                : 1
        );
        double mean = seconds.Average(),
            spread = Math.Sqrt(seconds.Sum(s => (s - mean) * (s - mean)));
        return (line.Slope, Math.Max(scatter, Math.Max(rounding, codeStep / 2.0)) / spread);
    }

    private static (double, double) Brightest(ScreenedFrame[] frames, int codeStep)
    {
        double[] spreads = [.. frames.Select(f => f.Channels.Average(c => c.BrightSpread))];
        double mean = spreads.Average(),
            scatter = Math.Sqrt(spreads.Sum(s => (s - mean) * (s - mean)) / (spreads.Length - 1));
        return (
            mean,
            Math.Max(scatter, codeStep) * Probability.CoverageWidening(frames.Length - 1) / Math.Sqrt(frames.Length)
        );
    }
}
