namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A heading with its content; in the PDF it begins a page.</summary>
/// <param name="Title">The heading; null for the first page, whose heading is the camera's name.</param>
/// <param name="Context">Small text beside the heading, such as the settings that the section is about; null when there is
/// only one.</param>
/// <param name="Blocks">The content.</param>
internal sealed record ReportSection(string? Title, string? Context, IReadOnlyList<Block> Blocks);
