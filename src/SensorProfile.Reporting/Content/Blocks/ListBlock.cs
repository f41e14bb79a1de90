namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A list of sentences.</summary>
/// <param name="Items">Plain text each.</param>
internal sealed record ListBlock(IReadOnlyList<string> Items) : Block;
