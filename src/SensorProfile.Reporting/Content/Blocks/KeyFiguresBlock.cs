namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>The few numbers that a page is about, in large type.</summary>
/// <param name="Figures">The numbers.</param>
internal sealed record KeyFiguresBlock(IReadOnlyList<KeyFigure> Figures) : Block;
