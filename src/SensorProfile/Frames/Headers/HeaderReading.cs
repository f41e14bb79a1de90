using SensorProfile.Profiles.Session;
using SensorProfile.Raw;

namespace SensorProfile.Frames.Headers;

/// <summary>What one header states about its frame, and everything wrong in it.</summary>
internal sealed record HeaderReading
{
    /// <summary>The kind of the frame.</summary>
    public required FrameKind Kind { get; init; }

    /// <summary>Evidence that the frame is a stack of several; null for a raw frame.</summary>
    public string? StackSign { get; init; }

    /// <summary>Exposure, s.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>Sensor temperature as read, °C; null when missing or not credible by itself.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Resolution of the reading, °C; 0 when the header does not tell.</summary>
    public double TemperatureStepCelsius { get; init; }

    /// <summary>Where a raw file says the temperature was read; null for other headers.</summary>
    public RawTemperaturePlace? TemperaturePlace { get; init; }

    /// <summary>Set temperature of the cooler, °C.</summary>
    public double? SetTemperatureCelsius { get; init; }

    /// <summary>Gain, offset, ISO, binning and read-out mode.</summary>
    public required ModeSettings Settings { get; init; }

    /// <summary>Start of the exposure, UTC.</summary>
    public DateTimeOffset? StartUtc { get; init; }

    /// <summary>Filter pattern in file order.</summary>
    public string? ColourFilter { get; init; }

    /// <summary>Camera name.</summary>
    public string? Camera { get; init; }

    /// <summary>Serial number of the camera; null when the header does not state it.</summary>
    public string? SerialNumber { get; init; }

    /// <summary>Gain claimed by the header, e-/ADU.</summary>
    public double? ClaimedGain { get; init; }

    /// <summary>Object in the image, according to the header; used only for hints.</summary>
    public string? ObjectName { get; init; }

    /// <summary>Everything wrong or worth knowing.</summary>
    public required IReadOnlyList<HeaderIssue> Issues { get; init; }

    /// <summary>Interprets a header; pixels are not needed.</summary>
    /// <param name="header">The keyword values.</param>
    /// <param name="height">Frame height, px: a bottom-up file of odd height starts with the other filter row.</param>
    public static HeaderReading Read(KeywordValues header, int height)
    {
        List<HeaderIssue> issues = [];
        (FrameKind kind, string? stackSign) = KindOf(header, issues);
        return new HeaderReading
        {
            Kind = kind,
            StackSign = stackSign,
            ExposureSeconds = ExposureKeywords.Read(header, issues),
            TemperatureCelsius = TemperatureKeywords.ReadSensor(header, issues),
            SetTemperatureCelsius = TemperatureKeywords.ReadSet(header),
            Settings = SettingsKeywords.Read(header, issues),
            StartUtc = StartTime.Read(header, issues),
            ColourFilter = FilterPattern.Read(header, height, issues),
            Camera = header.Text("INSTRUME"),
            ClaimedGain = header.Number(issues, null, "EGAIN") is { Value: > 0 and < 1e6 } gain ? gain.Value : null,
            ObjectName = header.Text("OBJECT"),
            Issues = issues,
        };
    }

    private static (FrameKind Kind, string? StackSign) KindOf(KeywordValues header, List<HeaderIssue> issues)
    {
        string? stackSign = CombinedFrames(header, issues);
        if (header.First("IMAGETYP", "FRAMETYP", "OBSTYPE", "FRAME") is not { } type)
        {
            issues.Add(new HeaderIssue(FindingCodes.KindMissing, "", "kind"));
            return (FrameKind.Unknown, stackSign);
        }
        (FrameKind kind, bool isStack) = KindWords.Parse(type.Text);
        if (isStack)
            stackSign = $"{type.Keyword} = '{type.Text}'";
        else if (kind == FrameKind.Unknown)
            issues.Add(new HeaderIssue(FindingCodes.KindNotUnderstood, $"{type.Keyword} = '{type.Text}'", "kind"));
        return (kind, stackSign);
    }

    private static string? CombinedFrames(KeywordValues header, List<HeaderIssue> issues)
    {
        foreach (string keyword in (ReadOnlySpan<string>)["NCOMBINE", "STACKCNT", "NSTACK"])
        {
            if (header.Number(issues, null, keyword) is { Value: > 1 } combined)
                return $"{keyword} = {NumberText.Of(combined.Value)}";
        }
        return null;
    }
}
