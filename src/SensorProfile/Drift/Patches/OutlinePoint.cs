namespace SensorProfile.Drift.Patches;

/// <summary>A vertex of an outline.</summary>
/// <param name="X">Column, from 1.</param>
/// <param name="Y">Row, from 1.</param>
internal sealed record OutlinePoint(int X, int Y);
