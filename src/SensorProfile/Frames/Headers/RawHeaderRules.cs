namespace SensorProfile.Frames.Headers;

/// <summary>The sentences for what raw files do not state, in the order in which they are reported.</summary>
internal static class RawHeaderRules
{
    /// <inheritdoc cref="HeaderFindings.Rule"/>
    public static IReadOnlyList<HeaderFindings.Rule> All { get; } =
    [
        new(FindingCodes.KindMissing, Severity.Warning, (n, d) =>
            $"A raw file does not state its kind of frame, so no measurement can use {n}: fill in column kind of "
            + "the capture table"
            + (d.Length > 0 ? $", or use the file or folder names, which say {d}." : ".")
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
            $"The time in {n} is the camera's clock without a time zone: it was used unchanged, which is right among "
            + "these frames but may be off relative to others."
        ),
        new(FindingCodes.CurvedCodes, Severity.Warning, (n, d) =>
            $"The codes of {n} follow a curve ({d}), which was straightened: levels are right, but bright codes are "
            + "coarse, so noise and gain from them are not those of the converter; set the camera to uncompressed or "
            + "lossless raw files."
        ),
        new(FindingCodes.CorrectionsNotApplied, Severity.Note, (n, d) =>
            $"A converter would correct the codes of {n} before it computes colours ({d}); nothing of it was applied: they "
            + "are measured as the camera stored them."
        ),
    ];
}
