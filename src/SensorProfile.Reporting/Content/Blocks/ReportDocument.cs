namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A report before it takes a form: what the PDF and the HTML page both show, in order.</summary>
/// <param name="Title">The camera's name.</param>
/// <param name="Subtitle">What was measured, when, by which program.</param>
/// <param name="CreatedUtc">Time of the profile; the documents carry it instead of the time of writing.</param>
/// <param name="Sections">The sections.</param>
internal sealed record ReportDocument(
    string Title,
    string Subtitle,
    DateTimeOffset CreatedUtc,
    IReadOnlyList<ReportSection> Sections
)
{
    /// <summary>What the document is, for its title.</summary>
    public string Kind { get; init; } = "camera profile";

    /// <summary>What it is about, for its properties.</summary>
    public string Subject { get; init; } = "Read noise, gain, dark current and defect pixels with their uncertainties";
}
