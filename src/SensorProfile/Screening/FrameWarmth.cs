using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;

namespace SensorProfile.Screening;

/// <summary>How warm the darks of one night were against each other, by the light of their hot pixels.</summary>
/// <remarks>
/// B = mean − median of a frame's pixels, less that of the bias frames: light that few pixels collect, whatever the black
/// level does. ΔT = ΔT₂·log₂(B/t), with ΔT₂ = 6 °C ± 1 °C (common practice, no source) since no law is known yet. The noise
/// of B comes from second differences of like exposures in time (their median, so that steps of temperature are no
/// noise). What exposures differ by (Poisson noise is skew where it is faint, hot pixels fill up, glow is there) shows where
/// frames of two exposures follow each other within a quarter of an hour; more than 2.5 °C is taken for a true step. A median over
/// three neighbours takes out single frames with light or a cosmic ray.
/// </remarks>
internal sealed class FrameWarmth
{
    public const double DoublingDoubt = 1; // °C, of 6 °C
    private const double MaxDoubt = 0.5; // °C of one frame: fainter ones take the warmth of their neighbours in time
    private const int MinFrames = 4;
    private const double LeastRelative = 0.005; // telegraph pixels and cosmic rays: no frame is known better
    private const double MaxOffset = 2.5; // °C between exposures: a factor of 1.33
    private const double NextWithin = 900; // s

    private readonly double[] times;
    private readonly double[] celsius;

    private FrameWarmth(double[] times, double[] celsius, double doubt) =>
        (this.times, this.celsius, Doubt) = (times, celsius, doubt);

    /// <summary>Standard uncertainty of one frame against another by noise, °C.</summary>
    public double Doubt { get; }

    /// <summary>Measures it; null where the hot pixels are too few or too faint.</summary>
    /// <param name="night">Darks in order of time, each with a time and an exposure.</param>
    /// <param name="bias">Bias frames of the same settings; without any, the longest exposure alone counts.</param>
    public static FrameWarmth? Measure(IReadOnlyList<ScreenedFrame> night, IReadOnlyList<ScreenedFrame> bias)
    {
        double unlit = bias.Count > 0 ? bias.Average(Skew) : 0;
        double[] exposures = [.. night.Select(f => f.Frame.ExposureSeconds!.Value).Distinct()];
        var points = new List<Point>();
        foreach (double seconds in bias.Count > 0 ? exposures : [exposures.Max()])
            points.AddRange(OfExposure([.. night.Where(f => f.Frame.ExposureSeconds == seconds)], seconds, unlit));
        if (points.Count < MinFrames)
            return null;
        points.Sort((a, b) => a.Time.CompareTo(b.Time));
        double[] raw = WithoutOffsets(points);
        double[] smooth =
        [
            .. raw.Select(
                (_, i) =>
                {
                    int from = Math.Clamp(i - 1, 0, Math.Max(0, raw.Length - 3));
                    return OrderStatistics.Median(raw.AsSpan(from, Math.Min(3, raw.Length)));
                }
            ),
        ];
        return new FrameWarmth([.. points.Select(p => p.Time)], smooth, points.Max(p => p.Doubt));
    }

    /// <summary>Middle of an exposure, s.</summary>
    public static double Middle(Frame frame) =>
        (frame.StartUtc!.Value - DateTimeOffset.UnixEpoch).TotalSeconds + ((frame.ExposureSeconds ?? 0) / 2);

    /// <summary>Warmth of a frame, °C; only differences mean something. Drawn in time where its own light is too faint.</summary>
    public double At(Frame frame)
    {
        double time = Middle(frame);
        int after = Array.FindIndex(times, t => t >= time);
        if (after <= 0)
            return after == 0 ? celsius[0] : celsius[^1];
        (double a, double b) = (times[after - 1], times[after]);
        return celsius[after - 1] + ((celsius[after] - celsius[after - 1]) * (time - a) / (b - a));
    }

    private static double Skew(ScreenedFrame frame) => frame.Channels.Average(c => c.Mean - c.Median);

    private static IEnumerable<Point> OfExposure(ScreenedFrame[] frames, double seconds, double unlit)
    {
        if (frames.Length < MinFrames)
            yield break;
        double[] light = [.. frames.Select(f => Skew(f) - unlit)];
        double[] bends =
        [
            .. Enumerable
                .Range(1, light.Length - 2)
                .Select(i => Math.Abs(light[i - 1] - (2 * light[i]) + light[i + 1]) / Math.Sqrt(6)),
        ];
        double noise = OrderStatistics.Median(bends) / 0.6745; // of |x| of a normal distribution: Φ⁻¹(3/4)
        double toCelsius = PhysicalConstants.UsualDoubling / Math.Log(2);
        for (int i = 0; i < frames.Length; i++)
        {
            double doubt = toCelsius * Math.Max(noise / light[i], LeastRelative);
            if (light[i] > 0 && doubt <= MaxDoubt)
                yield return new Point(
                    Middle(frames[i].Frame),
                    seconds,
                    toCelsius * Math.Log(light[i] / seconds),
                    doubt
                );
        }
    }

    private static double[] WithoutOffsets(List<Point> points)
    {
        // what the later of two exposures that follow each other reads above the earlier one
        var steps = new List<(double From, double To, double Gap, double Step)>();
        for (int i = 1; i < points.Count; i++)
        {
            (Point a, Point b) = (points[i - 1], points[i]);
            double gap = b.Time - a.Time - ((a.Seconds + b.Seconds) / 2);
            if (a.Seconds != b.Seconds && gap <= NextWithin)
                steps.Add(
                    a.Seconds < b.Seconds
                        ? (a.Seconds, b.Seconds, gap, b.Celsius - a.Celsius)
                        : (b.Seconds, a.Seconds, gap, a.Celsius - b.Celsius)
                );
        }
        (double From, double To, double Gap, double Step)[] edges =
        [
            .. steps
                .GroupBy(s => (s.From, s.To))
                .Select(g =>
                {
                    double nearest = 2 * Math.Max(0, g.Min(s => s.Gap)) + 1;
                    return (
                        g.Key.From,
                        g.Key.To,
                        g.Min(s => s.Gap),
                        OrderStatistics.Median([.. g.Where(s => s.Gap <= nearest).Select(s => s.Step)])
                    );
                })
                .OrderBy(e => e.Item3)
                .ThenBy(e => e.From)
                .ThenBy(e => e.To),
        ];
        var offsets = new Dictionary<double, double> { [points.Max(p => p.Seconds)] = 0 };
        while (edges.FirstOrDefault(e => offsets.ContainsKey(e.From) != offsets.ContainsKey(e.To)) is { To: > 0 } edge)
        {
            double step = Math.Abs(edge.Step) <= MaxOffset ? edge.Step : 0;
            if (offsets.TryGetValue(edge.From, out double from))
                offsets[edge.To] = from + step;
            else
                offsets[edge.From] = offsets[edge.To] - step;
        }
        return [.. points.Select(p => p.Celsius - offsets.GetValueOrDefault(p.Seconds))];
    }

    private sealed record Point(double Time, double Seconds, double Celsius, double Doubt);
}
