using static SensorProfile.Frames.NumberText;

namespace SensorProfile.Frames.Survey;

/// <summary>
/// Checks that need all frames together: several cameras, settings that change or are missing, odd sizes, two filter
/// patterns.
/// </summary>
internal static class SessionChecks
{
    /// <summary>Findings over all frames in use, which are ordered by time.</summary>
    public static IEnumerable<Finding> Find(IReadOnlyList<Frame> frames)
    {
        List<Finding> findings = [.. Cameras(frames)];
        foreach (IGrouping<string?, Frame> group in frames.GroupBy(f => f.Camera))
        {
            List<Frame> camera = [.. group];
            findings.AddRange(SilentSettings(camera));
            findings.AddRange(Changes(camera, "gain", f => Text(f.Settings.Gain)));
            findings.AddRange(Changes(camera, "offset", f => Text(f.Settings.Offset)));
            findings.AddRange(Changes(camera, "ISO", f => Text(f.Settings.Iso)));
            findings.AddRange(Changes(camera, "binning", f => f.Settings.Binning));
            findings.AddRange(Changes(camera, "read-out mode", f => f.Settings.Readout));
            findings.AddRange(Sizes(camera));
            findings.AddRange(Filters(camera));
        }
        return findings;
    }

    /// <summary>Cameras that write raw files have an ISO setting but none for the offset.</summary>
    private static IEnumerable<Finding> SilentSettings(List<Frame> camera)
    {
        bool hasIso = camera.TrueForAll(f => f.Format != FrameFormat.Fits);
        (string what, string column) = hasIso ? ("ISO", "iso") : ("gain (GAIN or ISOSPEED)", "gain");
        IEnumerable<Finding> gain = Silent(camera, FindingCodes.GainMissing, what, column, f =>
            f.Settings.Gain ?? f.Settings.Iso
        );
        return hasIso
            ? gain
            : gain.Concat(
                Silent(camera, FindingCodes.OffsetMissing, "offset (OFFSET or BLKLEVEL)", "offset", f =>
                    f.Settings.Offset
                )
            );
    }

    private static IEnumerable<Finding> Cameras(IReadOnlyList<Frame> frames)
    {
        var cameras = frames
            .Where(f => f.Camera is not null)
            .GroupBy(f => f.Camera!)
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .ToList();
        if (cameras.Count < 2)
            yield break;
        yield return new Finding(
            FindingCodes.SeveralCameras,
            Severity.Warning,
            $"Frames of {cameras.Count} cameras: "
                + $"{Counted.Some([.. cameras.Select(c => $"{c.Key} ({Counted.Frames(c.Count())})")], 5)}. They are "
                + "never pooled; give the frames of one camera at a time, or leave the others out with column use "
                + "of the capture table.",
            [.. cameras.Skip(1).SelectMany(c => c).Select(f => f.Name)]
        );
    }

    private static IEnumerable<Finding> Silent(
        List<Frame> camera,
        string code,
        string what,
        string column,
        Func<Frame, double?> value
    )
    {
        List<Frame> silent = camera.FindAll(f => value(f) is null);
        if (silent.Count == 0)
            yield break;
        yield return silent.Count == camera.Count
            ? new Finding(
                code,
                Severity.Note,
                $"No {what} in "
                    + $"{(camera.Count == 1 ? "the only frame" : $"any of {Counted.Frames(camera.Count)}")}{OfCamera(camera)}: "
                    + $"they are taken to share one setting; if they do not, fill in column {column} of the capture "
                    + "table.",
                Names(silent)
            )
            : new Finding(
                code,
                Severity.Warning,
                $"No {what} in {Counted.Frames(silent.Count)} of {camera.Count}{OfCamera(camera)}: these form sets "
                    + $"of their own; fill in column {column} of the capture table to pool them with the others.",
                Names(silent)
            );
    }

    private static IEnumerable<Finding> Changes(List<Frame> camera, string what, Func<Frame, string?> value)
    {
        var groups = camera
            .Where(f => value(f) is not null)
            .GroupBy(f => value(f)!)
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .ToList();
        if (groups.Count < 2)
            yield break;
        // a value with bias frames of its own looks intended; a value without them cannot be calibrated
        bool meant = groups.TrueForAll(g => g.Count(f => f.Kind == FrameKind.Bias) >= 2);
        string consequence = meant
            ? "each is measured by itself."
            : "frames that differ in it are never pooled or compared. "
                + $"{Lacking(groups)}Correct the capture table if it did not really change, or take the missing frames at "
                + "each value that you use.";
        yield return new Finding(
            FindingCodes.SettingChanges,
            meant ? Severity.Note : Severity.Warning,
            $"The {what} changes{OfCamera(camera)}: "
                + $"{Counted.Some([.. groups.Select(g => $"{g.Key} in {Counted.Frames(g.Count())}")], 5)}; "
                + $"{consequence}",
            [.. groups.Skip(1).SelectMany(g => g).Select(f => f.Name)]
        );
    }

    /// <summary>"At 800 there are no darks; at 1600 there are no bias frames and no flats. ".</summary>
    private static string Lacking(List<IGrouping<string, Frame>> groups)
    {
        (FrameKind Kind, string Name)[] kinds =
        [
            (FrameKind.Bias, "no bias frames"),
            (FrameKind.Dark, "no darks"),
            (FrameKind.Flat, "no flats"),
        ];
        var there = kinds.Where(k => groups.Exists(g => g.Any(f => f.Kind == k.Kind))).ToList();
        string[] lacks =
        [
            .. groups
                .Select(g =>
                    (g.Key, None: there.Where(k => g.All(f => f.Kind != k.Kind)).Select(k => k.Name).ToArray())
                )
                .Where(g => g.None.Length > 0)
                .Select(g => $"at {g.Key} there are {Counted.List(g.None)}"),
        ];
        return lacks.Length == 0 ? "" : $"{char.ToUpperInvariant(lacks[0][0])}{string.Join("; ", lacks)[1..]}. ";
    }

    private static IEnumerable<Finding> Sizes(List<Frame> camera)
    {
        foreach (IGrouping<string, Frame> binning in camera.GroupBy(f => f.Settings.Binning))
        {
            var sizes = binning
                .GroupBy(f => (f.Width, f.Height))
                .OrderByDescending(g => g.Count())
                .ThenBy(g => g.Key)
                .ToList();
            if (OtherPlaces(binning) is { Length: > 0 } moved)
                yield return new Finding(
                    FindingCodes.FrameSizeDiffers,
                    Severity.Warning,
                    $"{Counted.Frames(moved.Length)}{OfCamera(camera)} show another part of the sensor than the others of "
                        + "their size (their active area begins elsewhere): they are never pooled. Give them alone.",
                    Names(moved)
                );
            if (sizes.Count < 2)
                continue;
            Frame[] odd = [.. sizes.Skip(1).SelectMany(g => g)];
            yield return new Finding(
                FindingCodes.FrameSizeDiffers,
                Severity.Warning,
                $"Frames of {sizes.Count} sizes{OfCamera(camera)} at binning {binning.Key}: "
                    + $"{Counted.Some([.. sizes.Select(g => $"{g.Key.Width} × {g.Key.Height} px in {Counted.Frames(g.Count())}")], 5)}; "
                    + "they are never pooled. If the camera's crop mode was changed, give the frames of each size alone; "
                    + "leave out those from another camera.",
                Names(odd)
            );
        }
    }

    private static Frame[] OtherPlaces(IEnumerable<Frame> frames) =>
        [
            .. frames
                .GroupBy(f => (f.Width, f.Height))
                .SelectMany(size => size.GroupBy(f => f.Place).OrderByDescending(g => g.Count()).Skip(1))
                .SelectMany(place => place),
        ];

    private static IEnumerable<Finding> Filters(List<Frame> camera)
    {
        var patterns = camera
            .Where(f => f.ColourFilter is not null)
            .GroupBy(f => f.ColourFilter!)
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .ToList();
        if (patterns.Count < 2)
            yield break;
        yield return new Finding(
            FindingCodes.ColourFilterDiffers,
            Severity.Warning,
            $"{patterns.Count} colour filter patterns{OfCamera(camera)}: "
                + $"{Counted.Some([.. patterns.Select(g => $"{g.Key} in {Counted.Frames(g.Count())}")], 5)}; some "
                + "are flipped or cropped by an odd number of pixels, so they are never pooled.",
            [.. patterns.Skip(1).SelectMany(g => g).Select(f => f.Name)]
        );
    }

    private static string? Text(double? value) => value is { } number ? Short(number, 4) : null;

    private static string OfCamera(List<Frame> camera) => camera[0].Camera is { } name ? $" of {name}" : "";

    private static IReadOnlyList<string> Names(IEnumerable<Frame> frames) => [.. frames.Select(f => f.Name)];
}
