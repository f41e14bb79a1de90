using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Random choice of pixels.</summary>
internal static class RandomPixels
{
    // keeps this stream separate from the one that draws the properties
    private const long PlacesOnly = 1;

    /// <summary>
    /// Chooses every pixel independently with the same probability; ordered by position. The cost is proportional to
    /// the number chosen (geometric gaps).
    /// </summary>
    /// <param name="share">Probability, 0…1.</param>
    /// <param name="pixels">Number of pixels.</param>
    /// <param name="serial">The individual sensor.</param>
    /// <param name="purpose">What they are chosen for.</param>
    /// <param name="stream">Index of the stream.</param>
    public static List<int> Choose(double share, int pixels, ulong serial, Purpose purpose, long stream = PlacesOnly)
    {
        var chosen = new List<int>();
        if (share <= 0)
        {
            return chosen;
        }
        var random = RandomStream.For(serial, purpose, stream);
        double perGap = -Math.Log(1 - share); // infinite for 1: every gap is 0
        for (double index = Gap(ref random, perGap); index < pixels; index += 1 + Gap(ref random, perGap))
        {
            chosen.Add((int)index);
        }
        return chosen;
    }

    private static double Gap(ref RandomStream random, double perGap) => Math.Floor(random.NextExponential() / perGap);
}
