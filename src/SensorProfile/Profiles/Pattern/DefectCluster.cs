namespace SensorProfile.Profiles.Pattern;

/// <summary>A group of touching hot pixels.</summary>
/// <param name="X">Column of its middle, from 1.</param>
/// <param name="Y">Row of its middle, from 1.</param>
/// <param name="Pixels">Number of pixels.</param>
public sealed record DefectCluster(int X, int Y, int Pixels);
