namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>One hot pixel that changed.</summary>
/// <param name="X">Column, from 1.</param>
/// <param name="Y">Row, from 1, first row of the file first.</param>
/// <param name="Change">new | healed | brighter | fainter.</param>
/// <param name="From">Rate above the typical pixel then, e-/px/s.</param>
/// <param name="To">Rate above the typical pixel now, e-/px/s.</param>
/// <param name="Z">Difference over its uncertainty.</param>
public sealed record HotPixelChange(int X, int Y, string Change, Measurement From, Measurement To, double Z);
