namespace SensorProfile.Simulation.Tests.Randomness;

/// <summary>
/// Pearson's χ² as a standard normal deviate (Wilson and Hilferty 1931): good to a few per cent from 3 degrees of
/// freedom on.
/// </summary>
internal static class ChiSquare
{
    public static double Deviate(IReadOnlyList<double> expected, IReadOnlyList<long> observed)
    {
        double sum = 0;
        for (int i = 0; i < expected.Count; i++)
        {
            sum += (observed[i] - expected[i]) * (observed[i] - expected[i]) / expected[i];
        }
        double freedom = expected.Count - 1;
        double spread = 2 / (9 * freedom);
        return (Math.Cbrt(sum / freedom) - (1 - spread)) / Math.Sqrt(spread);
    }
}
