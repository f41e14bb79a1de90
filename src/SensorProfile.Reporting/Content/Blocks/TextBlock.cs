namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A paragraph.</summary>
/// <param name="Text">Plain text.</param>
internal sealed record TextBlock(string Text) : Block;
