namespace SensorProfile.Reporting.Content;

/// <summary>A report before it takes a form: what the PDF and the HTML page both show, in order.</summary>
/// <param name="Title">The camera's name.</param>
/// <param name="Subtitle">What was measured, when, by which program.</param>
/// <param name="CreatedUtc">Time of the profile; the documents carry it instead of the time of writing.</param>
/// <param name="Sections">The sections.</param>
internal sealed record ReportDocument(string Title, string Subtitle, DateTimeOffset CreatedUtc, IReadOnlyList<ReportSection> Sections);
