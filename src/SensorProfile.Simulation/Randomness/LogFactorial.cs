namespace SensorProfile.Simulation.Randomness;

/// <summary>ln k!, to about 1e-15 relative.</summary>
/// <remarks>Summed below 128; above, Stirling's series to 1/k⁵, whose next term is below 1e-18 there.</remarks>
internal static class LogFactorial
{
    private const int Tabulated = 128;
    private static readonly double[] Table = BuildTable();
    private static readonly double HalfLogTwoPi = 0.5 * Math.Log(2 * Math.PI);

    /// <summary>ln k!.</summary>
    /// <param name="k">0 or more.</param>
    public static double Of(int k)
    {
        if (k < Tabulated)
        {
            return Table[k];
        }
        double inverse = 1.0 / k;
        double inverseSquare = inverse * inverse;
        double series = inverse * (1.0 / 12 - inverseSquare * (1.0 / 360 - inverseSquare / 1260));
        return (k + 0.5) * Math.Log(k) - k + HalfLogTwoPi + series;
    }

    private static double[] BuildTable()
    {
        double[] table = new double[Tabulated];
        for (int k = 2; k < Tabulated; k++)
        {
            table[k] = table[k - 1] + Math.Log(k);
        }
        return table;
    }
}
