namespace SensorProfile.Frames;

/// <summary>Decides when two exposures count as the same.</summary>
/// <remarks>
/// The tolerance is 0.1 % of the exposure, because shutters and clocks scatter by about that; below one second up to 1
/// ms, but never more than 1 %, so that the light levels of a flat series in milliseconds stay apart.
/// </remarks>
internal static class SameExposure
{
    /// <summary>Tolerance for an exposure, s.</summary>
    public static double Tolerance(double seconds) => Math.Max(0.001 * seconds, Math.Min(0.001, 0.01 * seconds));

    /// <summary>Whether both are the same exposure; unknown matches only unknown.</summary>
    public static bool Test(double? a, double? b) =>
        a is { } x && b is { } y
            ? Math.Abs(x - y) <= Tolerance(Math.Min(Math.Abs(x), Math.Abs(y)))
            : a is null && b is null;
}
