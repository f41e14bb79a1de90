using SensorProfile.Profiles.Session;
using SensorProfile.Raw;

namespace SensorProfile.Frames.Headers;

/// <summary>What a raw file states about its frame. ISO takes the place of a FITS header's gain setting.</summary>
internal static class RawHeader
{
    /// <summary>Interprets the facts of a raw file.</summary>
    /// <param name="facts">Facts of the raw file.</param>
    /// <param name="colourFilter">Four letters in file order; null for monochrome.</param>
    /// <param name="linearisation">The curve of its codes; null when there is none.</param>
    public static HeaderReading Read(RawFacts facts, string? colourFilter, RawLinearisation? linearisation)
    {
        List<HeaderIssue> issues = [Issue(FindingCodes.KindMissing, "", "kind")];
        if (facts.ExposureSeconds is null)
            issues.Add(Issue(FindingCodes.ExposureMissing, "", "exposure_s"));
        if (linearisation is { } curve)
            issues.Add(
                Issue(FindingCodes.CurvedCodes, $"{curve.Table.Count} codes with steps of up to {curve.LargestStep}")
            );
        if (facts.Corrections.Count > 0)
            issues.Add(Issue(FindingCodes.CorrectionsNotApplied, string.Join(", ", facts.Corrections)));
        return new HeaderReading
        {
            Kind = FrameKind.Unknown,
            ExposureSeconds = facts.ExposureSeconds,
            TemperatureCelsius = Temperature(facts.Temperature, issues),
            TemperatureStepCelsius = facts.Temperature?.StepCelsius ?? 0,
            TemperaturePlace = facts.Temperature?.Place,
            Settings = new ModeSettings { Iso = facts.Iso },
            StartUtc = Start(facts.Time, issues),
            ColourFilter = colourFilter,
            Camera = facts.Camera,
            SerialNumber = facts.SerialNumber,
            Issues = issues,
        };
    }

    private static double? Temperature(RawTemperature? temperature, List<HeaderIssue> issues)
    {
        if (temperature is null)
            issues.Add(Issue(FindingCodes.TemperatureMissing, "", "temperature_c"));
        return temperature?.Celsius;
    }

    /// <summary>Without a zone, the camera's clock is taken as UTC: time differences stay right.</summary>
    private static DateTimeOffset? Start(RawTime? time, List<HeaderIssue> issues)
    {
        if (time is null)
        {
            issues.Add(Issue(FindingCodes.TimeMissing));
            return null;
        }
        if (time.Utc is { } utc)
            return utc;
        issues.Add(Issue(FindingCodes.TimeZoneMissing));
        return new DateTimeOffset(DateTime.SpecifyKind(time.Local, DateTimeKind.Unspecified), TimeSpan.Zero);
    }

    private static HeaderIssue Issue(string code, string detail = "", string? curedBy = null) =>
        new(code, detail, curedBy) { Source = HeaderSource.Raw };
}
