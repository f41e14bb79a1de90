namespace SensorProfile.Reporting.Content;

/// <summary>A paragraph.</summary>
/// <param name="Text">Plain text.</param>
internal sealed record TextBlock(string Text) : Block;
