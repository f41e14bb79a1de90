namespace SensorProfile.Tests.Data;

/// <summary>
/// How many cameras, nights or pairs a statistical test draws: a sample of the same seeds in the usual suite, all of
/// them in the long one (<c>.ci/long</c>, or SENSORPROFILE_LONG=1).
/// </summary>
internal static class LongRuns
{
    /// <summary>Whether the long suite runs.</summary>
    public static bool On { get; } = Environment.GetEnvironmentVariable("SENSORPROFILE_LONG") == "1";

    /// <summary>The number to draw. Bounds must be worked out from it: a sample is known less well.</summary>
    public static int Of(int usual, int all) => On ? all : usual;
}
