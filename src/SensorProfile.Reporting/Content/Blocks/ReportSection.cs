namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A heading and what stands under it; in the PDF it begins a page.</summary>
/// <param name="Title">The heading; null for the first page, which the camera's name heads.</param>
/// <param name="Context">Small words beside the heading, such as the settings the section holds for; null when there is
/// only one.</param>
/// <param name="Blocks">The content.</param>
internal sealed record ReportSection(string? Title, string? Context, IReadOnlyList<Block> Blocks);
