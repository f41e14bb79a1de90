using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Headers;

namespace SensorProfile.Frames.Survey;

/// <summary>
/// A frame on its way into the inventory, with what is known about it, its header and its row of the table.
/// </summary>
/// <param name="Frame">The frame with all corrections so far.</param>
/// <param name="Header">Contents of its header.</param>
/// <param name="Row">Its row of the capture table; null when there is none.</param>
/// <param name="Issues">Issues that remain after the table's corrections.</param>
internal sealed record ReadFrame(Frame Frame, HeaderReading Header, CaptureRow? Row, IReadOnlyList<HeaderIssue> Issues)
{
    /// <summary>Builds the frame: the table overrides the header, the header overrides the name.</summary>
    /// <param name="bare">Path, name, size and HDU, which do not depend on the header's meaning.</param>
    /// <param name="header">Contents of the header.</param>
    /// <param name="row">Row of the table.</param>
    /// <param name="namesSay">Whether names may give the kind.</param>
    public static ReadFrame Combine(Frame bare, HeaderReading header, CaptureRow? row, bool namesSay)
    {
        List<HeaderIssue> issues = [.. header.Issues.Where(issue => !IsCured(issue, row))];
        Frame frame = bare with
        {
            Kind = KindOf(NameUpToRoot(bare), header, row, namesSay, issues),
            ExposureSeconds = row?.ExposureSeconds ?? header.ExposureSeconds,
            TemperatureCelsius = row?.TemperatureCelsius ?? header.TemperatureCelsius,
            SetTemperatureCelsius = header.SetTemperatureCelsius,
            Settings = header.Settings with
            {
                Gain = row?.Gain ?? header.Settings.Gain,
                Offset = row?.Offset ?? header.Settings.Offset,
                Iso = row?.Iso ?? header.Settings.Iso,
                Binning = row?.Binning ?? header.Settings.Binning,
            },
            StartUtc = header.StartUtc,
            ColourFilter = header.ColourFilter,
            Camera = header.Camera,
            SetLabel = row?.Set,
            ClaimedGain = header.ClaimedGain,
        };
        CheckExposureAgainstKind(frame, issues);
        return new ReadFrame(frame, header, row, issues);
    }

    private static bool IsCured(HeaderIssue issue, CaptureRow? row) =>
        row is not null
        && issue.CuredBy switch
        {
            "kind" => row.Kind is not null,
            "exposure_s" => row.ExposureSeconds is not null,
            "temperature_c" => row.TemperatureCelsius is not null,
            "gain" => row.Gain is not null,
            "offset" => row.Offset is not null,
            "iso" => row.Iso is not null,
            "binning" => row.Binning is not null,
            _ => false,
        };

    /// <summary>
    /// The relative name with the given folder's own name in front: its frames are darks whether the user gives "survey
    /// night" or "survey night/darks".
    /// </summary>
    private static string NameUpToRoot(Frame bare)
    {
        string[] parts = FileNames.Normalise(bare.Path).Split('/');
        int wanted = bare.Name.Count(c => c == '/') + 2;
        return string.Join('/', parts.TakeLast(wanted));
    }

    private static FrameKind KindOf(
        string name,
        HeaderReading header,
        CaptureRow? row,
        bool namesSay,
        List<HeaderIssue> issues
    )
    {
        if (row?.Kind is { } said)
            return said;
        FrameKind? named = KindWords.FromName(name);
        if (header.Kind == FrameKind.Unknown)
        {
            if (named is not { } kind)
                return FrameKind.Unknown;
            int missing = issues.FindIndex(issue =>
                issue.Code is FindingCodes.KindMissing or FindingCodes.KindNotUnderstood
            );
            if (namesSay)
            {
                if (missing >= 0)
                    issues.RemoveAt(missing);
                issues.Add(new HeaderIssue(FindingCodes.KindFromName));
                return kind;
            }
            if (missing >= 0 && issues[missing].Code == FindingCodes.KindMissing)
                issues[missing] = issues[missing] with { Detail = KindWords.Name(kind) };
            return FrameKind.Unknown;
        }
        FrameKind? hint =
            header.ObjectName is { } target && KindWords.FromName(target) is FrameKind.Flat ? FrameKind.Flat : named;
        if (
            hint is { } other
            && other != header.Kind
            && !(header.Kind == FrameKind.Dark && other == FrameKind.DarkFlat)
        )
            issues.Add(
                new HeaderIssue(
                    FindingCodes.KindContradictsName,
                    $"{KindWords.Name(header.Kind)} by header, {KindWords.Name(other)} by name"
                )
            );
        return header.Kind;
    }

    private const double LongestBiasSeconds = 1.0; // a "bias" longer than this is more likely a mislabelled dark

    private static void CheckExposureAgainstKind(Frame frame, List<HeaderIssue> issues)
    {
        if (frame.ExposureSeconds == 0 && frame.Kind is not (FrameKind.Bias or FrameKind.Unknown))
            issues.Add(new HeaderIssue(FindingCodes.ExposureZero));
        if (frame.Kind == FrameKind.Bias && frame.ExposureSeconds > LongestBiasSeconds)
            issues.Add(
                new HeaderIssue(FindingCodes.BiasExposureLong, $"{NumberText.Short(frame.ExposureSeconds.Value, 3)} s")
            );
    }
}
