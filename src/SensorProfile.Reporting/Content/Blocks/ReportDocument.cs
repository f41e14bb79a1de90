namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A report independent of its format: what the PDF and the HTML page both show, in order.</summary>
/// <param name="Title">The camera's name.</param>
/// <param name="Subtitle">What was measured, when, by which program.</param>
/// <param name="CreatedUtc">Time of the profile; the documents carry it instead of the time they were written.</param>
/// <param name="Sections">The sections.</param>
internal sealed record ReportDocument(
    string Title,
    string Subtitle,
    DateTimeOffset CreatedUtc,
    IReadOnlyList<ReportSection> Sections
)
{
    /// <summary>Kind of document, for its title.</summary>
    public string Kind { get; init; } = "camera profile";

    /// <summary>Subject, for the properties of the document.</summary>
    public string Subject { get; init; } = "Read noise, gain, dark current and defect pixels with their uncertainties";
}
