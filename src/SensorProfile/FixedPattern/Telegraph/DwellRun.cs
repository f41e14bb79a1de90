namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>The frames of one set, in time order.</summary>
/// <param name="StartSeconds">Start of each frame, s; NaN when unknown.</param>
/// <param name="Upper">Whether the pixel was in its upper level; null when it stayed in one level and which one is
/// unknown.</param>
internal readonly record struct DwellRun(double[] StartSeconds, bool[]? Upper);
