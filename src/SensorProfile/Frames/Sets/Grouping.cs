namespace SensorProfile.Frames.Sets;

/// <summary>Forms the frame sets and reports temperature steps and drifts.</summary>
internal static class Grouping
{
    /// <summary>
    /// The sets: by kind, camera, size, settings, label, exposure and temperature; findings on steps and drifts.
    /// </summary>
    /// <param name="frames">Frames in use.</param>
    /// <param name="toleranceCelsius">Largest distance of a reading from its set's mean, °C; widened by half a step for
    /// a probe with larger jumps.</param>
    public static (IReadOnlyList<FrameSet> Sets, IReadOnlyList<Finding> Findings) Group(
        IReadOnlyList<Frame> frames,
        double toleranceCelsius
    )
    {
        List<FrameSet> sets = [];
        List<Finding> findings = [];
        foreach (
            IGrouping<string?, FrameSeries> camera in FrameSeries.Gather(frames).GroupBy(series => series.Key.Camera)
        )
        {
            double step = ProbeSteps.Find(camera.Select(series => series.Frames));
            double tolerance = ProbeSteps.Widen(toleranceCelsius, step);
            if (tolerance > toleranceCelsius)
                findings.Add(CoarseProbe(camera, step, toleranceCelsius));
            List<(FrameSeries Series, IReadOnlyList<FrameSet> Sets)> split =
            [
                .. camera.Select(series => (series, SetsOf(series, tolerance))),
            ];
            findings.AddRange(TemperatureDrifts.Find(split, tolerance, step));
            sets.AddRange(split.SelectMany(s => s.Sets));
        }
        return ([.. InOrder(sets)], findings);
    }

    private static IReadOnlyList<FrameSet> SetsOf(FrameSeries series, double tolerance)
    {
        List<Frame> known = [.. series.Frames.Where(f => f.TemperatureCelsius is not null)];
        List<Frame> unknown = [.. series.Frames.Where(f => f.TemperatureCelsius is null)];
        List<IReadOnlyList<Frame>> clusters = [.. TemperatureClusters.Find(known, tolerance)];
        // A bias level hardly depends on temperature: biases without a temperature join the others if there is only one
        // set to join.
        if (series.Key.Kind == FrameKind.Bias && clusters.Count == 1)
            clusters[0] = series.Frames;
        else if (series.Key.Kind == FrameKind.Dark)
            clusters.AddRange(NightSplit.Split(unknown));
        else if (unknown.Count > 0)
            clusters.Add(unknown);
        return [.. clusters.Select(cluster => SetOf(series, cluster))];
    }

    private static FrameSet SetOf(FrameSeries series, IReadOnlyList<Frame> frames)
    {
        double[] temperatures = [.. frames.Select(f => f.TemperatureCelsius).OfType<double>()];
        return new FrameSet
        {
            Kind = series.Key.Kind,
            Settings = series.Key.Settings,
            Width = series.Key.Width,
            Height = series.Key.Height,
            ExposureSeconds = series.ExposureSeconds,
            TemperatureCelsius = temperatures.Length > 0 ? temperatures.Average() : null,
            Label = series.Key.Label,
            Frames = frames,
        };
    }

    private static Finding CoarseProbe(IEnumerable<FrameSeries> camera, double step, double tolerance)
    {
        string[] values =
        [
            .. camera
                .SelectMany(s => s.Frames)
                .Select(f => f.TemperatureCelsius)
                .OfType<double>()
                .Distinct()
                .Order()
                .Select(v => NumberText.Short(v)),
        ];
        string widened = NumberText.Short(ProbeSteps.Widen(tolerance, step));
        return new Finding(
            FindingCodes.TemperatureSteps,
            Severity.Warning,
            $"The temperature probe jumps back and forth by {NumberText.Short(step)} °C between frames "
                + $"({Counted.Some(values, 6)} °C were read): frames within {widened} °C of their set's mean were "
                + $"pooled instead of {NumberText.Short(tolerance)} °C, and temperatures are no better known than "
                + "that."
        );
    }

    private static IEnumerable<FrameSet> InOrder(IEnumerable<FrameSet> sets) =>
        sets.OrderBy(s => s.Kind == FrameKind.Unknown ? int.MaxValue : (int)s.Kind)
            .ThenBy(s => s.Frames[0].Camera, StringComparer.Ordinal)
            .ThenBy(s => s.Width)
            .ThenBy(s => s.Height)
            .ThenBy(s => s.Settings.Binning, StringComparer.Ordinal)
            .ThenBy(s => s.Settings.Readout, StringComparer.Ordinal)
            .ThenBy(s => s.Settings.Gain)
            .ThenBy(s => s.Settings.Iso)
            .ThenBy(s => s.Settings.Offset)
            .ThenBy(s => s.Label, StringComparer.Ordinal)
            .ThenBy(s => s.ExposureSeconds)
            .ThenBy(s => s.TemperatureCelsius)
            .ThenBy(s => s.Frames[0], FrameOrder.ByTimeThenName);
}
