namespace SensorProfile.Tests.Pixels;

/// <summary>Normal and Poisson numbers from a fixed seed.</summary>
internal sealed class NormalNoise(int seed)
{
    private readonly Random _random = new(seed);

    public double Next(double standardDeviation = 1) => standardDeviation * Of(_random);

    /// <summary>A standard normal number from a source of its own (Box and Muller 1958).</summary>
    public static double Of(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Poisson with mean μ by counting exponential intervals; for small μ.</summary>
    public int Poisson(double mean)
    {
        double product = _random.NextDouble(),
            limit = Math.Exp(-mean);
        int count = 0;
        for (; product > limit; count++)
            product *= _random.NextDouble();
        return count;
    }
}
