namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Frames of one set in the order of time.</summary>
/// <param name="StartSeconds">Start of each, s; not a number where unknown.</param>
/// <param name="Upper">Whether the pixel was in its upper level; null when it stayed in one level and it is not known
/// in which.</param>
internal readonly record struct DwellRun(double[] StartSeconds, bool[]? Upper);
