namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A heading within a section; it is kept on the page of what follows it.</summary>
/// <param name="Text">Plain text.</param>
internal sealed record SubheadingBlock(string Text) : Block;
