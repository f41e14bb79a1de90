namespace SensorProfile.Reporting.Content;

/// <summary>One piece of a section.</summary>
internal abstract record Block;
