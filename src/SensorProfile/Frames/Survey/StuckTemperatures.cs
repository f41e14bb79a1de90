using static SensorProfile.Frames.NumberText;

namespace SensorProfile.Frames.Survey;

/// <summary>Finds sensor temperatures that only a comparison between frames shows to be false.</summary>
/// <remarks>
/// A well-regulated cooler, read to 0.1 °C, also shows one value for hours, so a constant reading alone proves nothing.
/// In a session (one camera, no pause longer than six hours) a reading counts as stuck, and is unknown from then on,
/// when
/// <list type="bullet">
/// <item>it is the same in every frame although the set temperatures differ by more than 0.5 °C; or</item>
/// <item>it stays the same for more than an hour while the set temperature is more than 0.5 °C away from it; or</item>
/// <item>it is the same in every frame for more than an hour, no set temperature is given, and no cooler would hold it:
/// exactly 0, or 15 °C and more.</item>
/// </list>
/// A value that a cooler could hold, constant for an hour without a set temperature, is used with a note. So is a
/// reading equal to the set temperature in every frame. For frames without a time, the sum of their exposures counts:
/// the least time that can have passed.
/// </remarks>
internal static class StuckTemperatures
{
    private const double SetPointDifference = 0.5; // °C
    private const double WarmestRegulated = 15; // °C; nobody sets a cooler warmer than this
    private const double CoarseStep = 0.5; // °C; at room temperature, whole degrees stay the same for hours
    private const int MinFrames = 3;
    private const int MinEqualToSet = 5;
    private static readonly TimeSpan longEnough = TimeSpan.FromHours(1);
    private static readonly TimeSpan pause = TimeSpan.FromHours(6);

    /// <summary>
    /// Makes false readings unknown (unless the table gives the temperature) and reports what was found.
    /// </summary>
    public static (IReadOnlyList<ReadFrame> Frames, IReadOnlyList<Finding> Findings) Check(
        IReadOnlyList<ReadFrame> frames
    )
    {
        HashSet<ReadFrame> stuck = new(ReferenceEqualityComparer.Instance),
            constant = new(ReferenceEqualityComparer.Instance),
            isSetPoint = new(ReferenceEqualityComparer.Instance);
        foreach (List<ReadFrame> session in Sessions(frames))
        {
            List<ReadFrame> found = StuckIn(session);
            stuck.UnionWith(found);
            if (found.Count > 0)
                continue;
            if (
                session.Count >= MinEqualToSet
                && session.TrueForAll(f => f.Header.SetTemperatureCelsius == f.Header.TemperatureCelsius)
            )
                isSetPoint.UnionWith(session);
            else if (IsOneValueForLong(session) && session.TrueForAll(f => f.Header.SetTemperatureCelsius is null))
                constant.UnionWith(session);
        }
        List<ReadFrame> doubted = InOrder(frames, stuck);
        HashSet<ReadFrame> unknown = new(doubted, ReferenceEqualityComparer.Instance);
        IReadOnlyList<ReadFrame> result =
        [
            .. frames.Select(f =>
                unknown.Contains(f) ? f with { Frame = f.Frame with { TemperatureCelsius = null } } : f
            ),
        ];
        return (result, [.. Tell(doubted, InOrder(frames, constant), InOrder(frames, isSetPoint))]);
    }

    private static IEnumerable<Finding> Tell(
        List<ReadFrame> stuck,
        List<ReadFrame> constant,
        List<ReadFrame> isSetPoint
    )
    {
        if (stuck.Count > 0)
            yield return new Finding(
                FindingCodes.TemperatureStuck,
                Severity.Warning,
                $"The sensor temperature is stuck at {Values(stuck)} °C in {Counted.Frames(stuck.Count)}, "
                    + "which the set temperature or the elapsed time contradicts: it is taken as unknown; "
                    + "fill in column temperature_c of the capture table if you know it.",
                Names(stuck)
            );
        if (constant.Count > 0)
            yield return new Finding(
                FindingCodes.TemperatureConstant,
                Severity.Note,
                $"The sensor temperature is {Values(constant)} °C in all of {Counted.Frames(constant.Count)} "
                    + "taken over more than an hour, and no set temperature is given: it was used; if the camera "
                    + "has no working cooler, the reading is not real.",
                Names(constant)
            );
        if (isSetPoint.Count > 0)
            yield return new Finding(
                FindingCodes.TemperatureIsSetPoint,
                Severity.Note,
                "The sensor temperature equals the set temperature in all of "
                    + $"{Counted.Frames(isSetPoint.Count)}: it was used, but may be the set temperature written in "
                    + "place of a reading; check that the capture program reads the sensor.",
                Names(isSetPoint)
            );
    }

    private static List<ReadFrame> StuckIn(List<ReadFrame> session)
    {
        if (session.Count < MinFrames)
            return [];
        if (IsOneValue(session))
        {
            double[] set = [.. session.Select(f => f.Header.SetTemperatureCelsius).OfType<double>()];
            if (set.Length > 0 && set.Max() - set.Min() > SetPointDifference)
                return session;
            double value = session[0].Header.TemperatureCelsius!.Value;
            bool changesWouldShow = session.TrueForAll(f => f.Header.TemperatureStepCelsius < CoarseStep);
            if (
                changesWouldShow
                && set.Length == 0
                && (value == 0 || value >= WarmestRegulated)
                && Span(session) > longEnough
            )
                return session;
        }
        return
        [
            .. Runs(session)
                .Where(run => run.Count >= MinFrames && Span(run) > longEnough && run.TrueForAll(IsAwayFromSet))
                .SelectMany(run => run),
        ];
    }

    private static bool IsOneValueForLong(List<ReadFrame> session) =>
        session.Count >= MinFrames && IsOneValue(session) && Span(session) > longEnough;

    private static bool IsOneValue(List<ReadFrame> session) =>
        session.TrueForAll(f => f.Header.TemperatureCelsius == session[0].Header.TemperatureCelsius);

    private static bool IsAwayFromSet(ReadFrame frame) =>
        frame.Header.SetTemperatureCelsius is { } set
        && Math.Abs(set - frame.Header.TemperatureCelsius!.Value) > SetPointDifference;

    /// <summary>Consecutive frames with the same reading on the same side of the set temperature.</summary>
    private static IEnumerable<List<ReadFrame>> Runs(List<ReadFrame> session)
    {
        List<ReadFrame> run = [];
        foreach (ReadFrame frame in session)
        {
            if (
                run.Count > 0
                && (
                    run[0].Header.TemperatureCelsius != frame.Header.TemperatureCelsius
                    || IsAwayFromSet(run[0]) != IsAwayFromSet(frame)
                )
            )
            {
                yield return run;
                run = [];
            }
            run.Add(frame);
        }
        yield return run;
    }

    private static IEnumerable<List<ReadFrame>> Sessions(IReadOnlyList<ReadFrame> frames)
    {
        IEnumerable<ReadFrame> read = frames.Where(f => f.Header.TemperatureCelsius is not null);
        foreach (
            IGrouping<(string?, bool), ReadFrame> camera in read.GroupBy(f =>
                (f.Frame.Camera, f.Frame.StartUtc is not null)
            )
        )
        {
            List<ReadFrame> session = [];
            foreach (ReadFrame frame in camera.OrderBy(f => f.Frame, FrameOrder.ByTimeThenName))
            {
                if (session.Count > 0 && frame.Frame.StartUtc - session[^1].Frame.StartUtc > pause)
                {
                    yield return session;
                    session = [];
                }
                session.Add(frame);
            }
            yield return session;
        }
    }

    private static TimeSpan Span(List<ReadFrame> frames)
    {
        double exposures = frames.Sum(f => f.Frame.ExposureSeconds ?? 0);
        TimeSpan between = (frames[^1].Frame.StartUtc - frames[0].Frame.StartUtc) ?? TimeSpan.Zero;
        TimeSpan least = TimeSpan.FromSeconds(Math.Min(exposures, 1e9));
        return between > least ? between : least;
    }

    private static List<ReadFrame> InOrder(IReadOnlyList<ReadFrame> frames, HashSet<ReadFrame> chosen) =>
        [.. frames.Where(f => chosen.Contains(f) && f.Row?.TemperatureCelsius is null)];

    private static string Values(List<ReadFrame> frames) =>
        Counted.Some([
            .. frames.Select(f => f.Header.TemperatureCelsius!.Value).Distinct().Order().Select(value => Short(value)),
        ]);

    private static IReadOnlyList<string> Names(List<ReadFrame> frames) => [.. frames.Select(f => f.Frame.Name)];
}
