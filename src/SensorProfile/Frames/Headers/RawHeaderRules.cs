namespace SensorProfile.Frames.Headers;

/// <summary>The sentences for what raw files leave open, in the order in which they are told.</summary>
internal static class RawHeaderRules
{
    /// <inheritdoc cref="HeaderFindings.Rule"/>
    public static IReadOnlyList<HeaderFindings.Rule> All { get; } =
    [
        new(FindingCodes.KindMissing, Severity.Warning, (n, d) =>
            $"A raw file does not say what it was taken for, so {n} can enter no measurement: fill in column kind of "
            + "the capture table"
            + (d.Length > 0 ? $", or let the names speak: those of files or folders say {d}." : ".")
        ),
        new(FindingCodes.ExposureMissing, Severity.Warning, (n, _) =>
            $"No exposure (ExposureTime) in {n}: it is unknown; fill in column exposure_s of the capture table."
        ),
        new(FindingCodes.TemperatureMissing, Severity.Warning, (n, _) =>
            $"No temperature in {n}: it is unknown and dark current cannot be tied to a temperature; if a thermometer "
            + "lay beside the camera, fill in column temperature_c of the capture table."
        ),
        new(FindingCodes.TimeMissing, Severity.Note, (n, _) =>
            $"No time (DateTimeOriginal) in {n}: they are ordered by name, and drifts in time cannot be seen."
        ),
        new(FindingCodes.TimeZoneMissing, Severity.Note, (n, _) =>
            $"The time in {n} is the camera's clock without a time zone: it was used as it stands, which is right "
            + "between these frames, and may be off against others."
        ),
        new(FindingCodes.CurvedCodes, Severity.Warning, (n, d) =>
            $"The codes of {n} follow a curve ({d}), which was straightened: levels are right, but bright codes are "
            + "coarse, so noise and gain from them are not those of the converter; set the camera to uncompressed or "
            + "lossless raw files."
        ),
    ];
}
