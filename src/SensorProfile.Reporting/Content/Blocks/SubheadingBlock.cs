namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A heading within a section, kept on the same page as what follows it.</summary>
/// <param name="Text">Plain text.</param>
internal sealed record SubheadingBlock(string Text) : Block;
