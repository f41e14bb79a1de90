namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>A number in large type.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">The number with its uncertainty; "not measured" when there is none.</param>
/// <param name="Unit">Its unit, or the reason why it is missing.</param>
internal sealed record KeyFigure(string Label, string Value, string Unit);
