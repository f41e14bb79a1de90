namespace SensorProfile.Frames.Survey;

/// <summary>
/// Interpolates thermometer readings that were typed in for some frames to the frames between them, for cameras that
/// record no temperature.
/// </summary>
/// <remarks>
/// Linear in time between two readings of one stretch of the session, the nearest reading outside them; a pause of half
/// an hour ends a stretch, because the camera may be at another temperature afterwards.
/// </remarks>
internal static class TypedTemperatures
{
    private static readonly TimeSpan pause = TimeSpan.FromMinutes(30);

    /// <summary>The frames with interpolated temperatures, and a finding.</summary>
    public static (IReadOnlyList<ReadFrame> Frames, IReadOnlyList<Finding> Findings) Spread(
        IReadOnlyList<ReadFrame> frames
    )
    {
        var filled = new Dictionary<ReadFrame, double>(ReferenceEqualityComparer.Instance);
        foreach (List<ReadFrame> stretch in Stretches(frames))
        {
            (double Time, double Celsius)[] readings =
            [
                .. stretch.Where(IsTyped).Select(f => (Middle(f), f.Row!.TemperatureCelsius!.Value)),
            ];
            // if some frames have a probe reading, the others lack it by a fault of the header and stay unknown
            if (readings.Length == 0 || stretch.Exists(f => f.Header.TemperatureCelsius is not null))
                continue;
            foreach (ReadFrame silent in stretch.Where(f => f.Frame.TemperatureCelsius is null))
                filled[silent] = At(readings, Middle(silent));
        }
        ReadFrame[] result =
        [
            .. frames.Select(f =>
                filled.TryGetValue(f, out double celsius) ? With(f, celsius)
                : IsTyped(f) ? f with { Frame = f.Frame with { TemperatureOrigin = TemperatureOrigin.Typed } }
                : f
            ),
        ];
        if (filled.Count == 0)
            return (result, []);
        return (result, [Tell([.. frames.Where(filled.ContainsKey)], frames)]);
    }

    /// <summary>
    /// A table written from the headers repeats their readings; only a reading that no header has was typed.
    /// </summary>
    private static bool IsTyped(ReadFrame frame) =>
        frame.Row?.TemperatureCelsius is not null && frame.Header.TemperatureCelsius is null;

    private static Finding Tell(IReadOnlyList<ReadFrame> filled, IReadOnlyList<ReadFrame> frames) =>
        new(
            FindingCodes.TemperatureTyped,
            Severity.Warning,
            $"The temperature of {Counted.Frames(filled.Count)} was interpolated in time between the readings that the "
                + $"capture table gives for {Counted.Frames(frames.Count(IsTyped))}: it is only as "
                + "good as the thermometer was close to the sensor; if the hot pixels say otherwise, they correct it when the darks "
                + "are measured.",
            [.. filled.Select(f => f.Frame.Name)]
        );

    private static ReadFrame With(ReadFrame frame, double celsius) =>
        frame with
        {
            Frame = frame.Frame with
            {
                TemperatureCelsius = Math.Round(celsius, 2),
                TemperatureOrigin = TemperatureOrigin.Drawn,
            },
            Issues = [.. frame.Issues.Where(issue => issue.Code != FindingCodes.TemperatureMissing)],
        };

    private static double At((double Time, double Celsius)[] readings, double time)
    {
        int after = Array.FindIndex(readings, r => r.Time >= time);
        if (after <= 0)
            return after == 0 ? readings[0].Celsius : readings[^1].Celsius;
        ((double Time, double Celsius) a, (double Time, double Celsius) b) = (readings[after - 1], readings[after]);
        return a.Celsius + ((b.Celsius - a.Celsius) * (time - a.Time) / (b.Time - a.Time));
    }

    /// <summary>Frames of one camera ordered by time, without a pause between them.</summary>
    private static IEnumerable<List<ReadFrame>> Stretches(IReadOnlyList<ReadFrame> frames)
    {
        foreach (
            IGrouping<string?, ReadFrame> camera in frames
                .Where(f => f.Frame.StartUtc is not null)
                .GroupBy(f => f.Frame.Camera)
        )
        {
            List<ReadFrame> stretch = [];
            foreach (ReadFrame frame in camera.OrderBy(f => f.Frame, FrameOrder.ByTimeThenName))
            {
                if (stretch.Count > 0 && frame.Frame.StartUtc - End(stretch[^1]) > pause)
                {
                    yield return stretch;
                    stretch = [];
                }
                stretch.Add(frame);
            }
            yield return stretch;
        }
    }

    private static DateTimeOffset End(ReadFrame frame) =>
        frame.Frame.StartUtc!.Value.AddSeconds(frame.Frame.ExposureSeconds ?? 0);

    /// <summary>Middle of the exposure, s.</summary>
    private static double Middle(ReadFrame frame) =>
        (frame.Frame.StartUtc!.Value - DateTimeOffset.UnixEpoch).TotalSeconds
        + ((frame.Frame.ExposureSeconds ?? 0) / 2);
}
