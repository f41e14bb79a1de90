namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>One piece of a section.</summary>
internal abstract record Block;
