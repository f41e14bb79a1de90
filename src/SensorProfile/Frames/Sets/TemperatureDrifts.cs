using SensorProfile.Frames.Headers;
using static SensorProfile.Frames.NumberText;

namespace SensorProfile.Frames.Sets;

/// <summary>Slow changes of temperature within a series, and with the exposure of the darks.</summary>
internal static class TemperatureDrifts
{
    private const int MinFrames = 4;
    private const double ClearTrend = 0.8; // correlation of temperature with time
    private const double ClearOrder = 0.9; // rank correlation of temperature with exposure
    private const int MinExposures = 4;
    private static readonly TimeSpan pause = TimeSpan.FromHours(6);

    /// <summary>Findings for the series of one camera and the sets they were split into.</summary>
    /// <param name="camera">The series and their sets.</param>
    /// <param name="tolerance">Tolerance used to form the sets, °C.</param>
    /// <param name="step">Step of a coarse probe, °C, which does not count as a trend; see
    /// <see cref="ProbeSteps"/>.</param>
    public static IEnumerable<Finding> Find(
        IReadOnlyList<(FrameSeries Series, IReadOnlyList<FrameSet> Sets)> camera,
        double tolerance,
        double step
    )
    {
        List<(string Text, IReadOnlyList<Frame> Frames)> split = [],
            within = [];
        foreach ((FrameSeries series, IReadOnlyList<FrameSet> sets) in camera)
        {
            foreach (List<Frame> stretch in Stretches(series.Frames, tolerance))
            {
                HashSet<Frame> members = new(stretch, ReferenceEqualityComparer.Instance);
                // what was interpolated between typed readings says nothing of its own
                if (stretch.Count(f => f.TemperatureOrigin == TemperatureOrigin.Drawn) > stretch.Count / 2)
                    continue;
                int parts = sets.Count(set => set.Frames.Any(members.Contains));
                string text =
                    $"{Name(series, stretch.Count)}: {Short(stretch[0].TemperatureCelsius!.Value)} to "
                    + $"{Short(stretch[^1].TemperatureCelsius!.Value)} °C";
                if (parts > 1)
                    split.Add(($"{text}, {parts} sets", stretch));
                else if (IsTrend(stretch, tolerance + step))
                    within.Add((text, stretch));
            }
        }
        if (split.Count > 0)
            yield return Tell(
                split,
                $"and the frames were split into sets that stay within {Short(tolerance)} °C of their mean",
                "let the camera settle before a series, or take more frames at each temperature"
            );
        if (within.Count > 0)
            yield return Tell(
                within,
                "and the readings stay close enough for one set",
                "let the camera settle before a series"
            );
        foreach (Finding finding in AlongExposure([.. camera.SelectMany(c => c.Sets)], tolerance))
            yield return finding;
    }

    private static Finding Tell(
        List<(string Text, IReadOnlyList<Frame> Frames)> cases,
        string consequence,
        string remedy
    ) =>
        new(
            FindingCodes.TemperatureDrift,
            Severity.Warning,
            $"The sensor temperature drifted within {(cases.Count == 1 ? "one series" : $"{cases.Count} series")} "
                + $"({Counted.Some([.. cases.Select(c => c.Text)])}), {consequence}: {remedy}.",
            [.. cases.SelectMany(c => c.Frames).Select(f => f.Name)]
        );

    /// <summary>Consecutive frames without a pause and without a jump too large for a drift.</summary>
    private static IEnumerable<List<Frame>> Stretches(IReadOnlyList<Frame> frames, double tolerance)
    {
        List<Frame> stretch = [];
        foreach (Frame frame in frames.Where(f => f.TemperatureCelsius is not null && f.StartUtc is not null))
        {
            bool goesOn =
                stretch.Count == 0
                || (
                    frame.StartUtc - stretch[^1].StartUtc <= pause
                    && Math.Abs(frame.TemperatureCelsius!.Value - stretch[^1].TemperatureCelsius!.Value)
                        <= 2 * tolerance
                );
            if (!goesOn)
            {
                if (stretch.Count >= MinFrames)
                    yield return stretch;
                stretch = [];
            }
            stretch.Add(frame);
        }
        if (stretch.Count >= MinFrames)
            yield return stretch;
    }

    private static bool IsTrend(List<Frame> stretch, double least)
    {
        double[] time = [.. stretch.Select(f => (f.StartUtc!.Value - stretch[0].StartUtc!.Value).TotalSeconds)];
        double[] temperature = [.. stretch.Select(f => f.TemperatureCelsius!.Value)];
        (double slope, double correlation) = FitSlope(time, temperature);
        return Math.Abs(slope) * time[^1] >= least && Math.Abs(correlation) >= ClearTrend;
    }

    private static IEnumerable<Finding> AlongExposure(IReadOnlyList<FrameSet> sets, double tolerance)
    {
        IEnumerable<FrameSet> darks = sets.Where(s =>
            s is { Kind: FrameKind.Dark, ExposureSeconds: not null, TemperatureCelsius: not null }
        );
        foreach (var mode in darks.GroupBy(s => (s.Settings, s.Width, s.Height, s.Label)))
        {
            List<FrameSet> byExposure = [.. mode.OrderBy(s => s.ExposureSeconds)];
            double[] temperature = [.. byExposure.Select(s => s.TemperatureCelsius!.Value)];
            if (
                byExposure.Select(s => s.ExposureSeconds).Distinct().Count() < MinExposures
                || temperature.Max() - temperature.Min() <= tolerance
            )
                continue;
            double correlation = FitSlope(
                Ranks([.. byExposure.Select(s => s.ExposureSeconds!.Value)]),
                Ranks(temperature)
            ).Correlation;
            if (Math.Abs(correlation) < ClearOrder)
                continue;
            yield return new Finding(
                FindingCodes.TemperatureFollowsExposure,
                Severity.Warning,
                $"The longer the darks, the {(correlation < 0 ? "colder" : "warmer")} the sensor "
                    + $"({Short(temperature[0])} °C at {Short(byExposure[0].ExposureSeconds!.Value, 6)} s, "
                    + $"{Short(temperature[^1])} °C at {Short(byExposure[^1].ExposureSeconds!.Value, 6)} s): the "
                    + "effects of exposure and temperature cannot be separated; take the exposures in mixed "
                    + "order, or let the camera settle first.",
                [.. byExposure.SelectMany(s => s.Frames).Select(f => f.Name)]
            );
        }
    }

    private static string Name(FrameSeries series, int frames) =>
        $"{Counted.Nouns(frames, KindWords.Name(series.Key.Kind) + " frame")}"
        + (series.ExposureSeconds is { } s ? $" of {Short(s, 6)} s" : "");

    /// <summary>Slope and correlation of a least-squares line; 0 when either variable is constant.</summary>
    private static (double Slope, double Correlation) FitSlope(double[] x, double[] y)
    {
        double meanX = x.Average(),
            meanY = y.Average(),
            xx = 0,
            xy = 0,
            yy = 0;
        for (int i = 0; i < x.Length; i++)
        {
            (double dx, double dy) = (x[i] - meanX, y[i] - meanY);
            (xx, xy, yy) = (xx + dx * dx, xy + dx * dy, yy + dy * dy);
        }
        return xx == 0 || yy == 0 ? (0, 0) : (xy / xx, xy / Math.Sqrt(xx * yy));
    }

    /// <summary>Ranks from 1; ties share their mean rank.</summary>
    private static double[] Ranks(double[] values) =>
        [.. values.Select(v => 1 + values.Count(other => other < v) + (values.Count(other => other == v) - 1) / 2.0)];
}
