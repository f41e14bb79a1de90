namespace SensorProfile.Frames.Sets;

/// <summary>
/// How far a camera's temperature probe jumps back and forth between frames, which is not a change of temperature.
/// </summary>
internal static class ProbeSteps
{
    private const int MinReversals = 3;
    private const double MinShare = 0.1;
    private const double LargestStep = 1.0; // °C; a larger jump counts as a real change
    private static readonly TimeSpan pause = TimeSpan.FromMinutes(30);

    /// <summary>
    /// Median size of a jump that the next frame reverses, °C; 0 when such jumps are rare or larger than a coarse probe
    /// explains.
    /// </summary>
    /// <param name="series">Series of one camera, each ordered by time; frames without a temperature are
    /// ignored.</param>
    public static double Find(IEnumerable<IReadOnlyList<Frame>> series)
    {
        List<double> reversals = [];
        int triples = 0;
        foreach (IReadOnlyList<Frame> one in series)
        {
            List<Frame> read = [.. one.Where(f => f.TemperatureCelsius is not null)];
            for (int i = 2; i < read.Count; i++)
            {
                if (read[i].StartUtc - read[i - 2].StartUtc > pause)
                    continue;
                triples++;
                double before = (read[i - 1].TemperatureCelsius - read[i - 2].TemperatureCelsius)!.Value;
                double after = (read[i].TemperatureCelsius - read[i - 1].TemperatureCelsius)!.Value;
                if (before * after < 0)
                    reversals.Add(Math.Min(Math.Abs(before), Math.Abs(after)));
            }
        }
        if (reversals.Count < MinReversals || reversals.Count < MinShare * triples)
            return 0;
        reversals.Sort();
        double step = reversals[reversals.Count / 2];
        return step <= LargestStep ? step : 0;
    }

    /// <summary>
    /// Tolerance for a set: half a step more when the probe jumps by more than the tolerance, because half a step is
    /// then its reading error.
    /// </summary>
    public static double Widen(double tolerance, double step) => step > tolerance ? tolerance + step / 2 : tolerance;
}
