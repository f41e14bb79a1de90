using System.Runtime.CompilerServices;

namespace SensorProfile.Simulation.Randomness;

/// <summary>Draws from the Poisson distribution, exact at every mean: no normal approximation.</summary>
/// <remarks>
/// Below <see cref="PoissonTable.End"/> the mean is split into a multiple of the tables' step and a small remainder;
/// the sum of two Poisson variables is one with the summed mean. The remainder is drawn as the number of exponential
/// waiting times that fit into it: in most cases a single draw, without an exponential function of the mean. Beyond the
/// tables: transformed rejection (Hörmann 1993, Insur. Math. Econ. 12, 39, algorithm PTRS).
/// </remarks>
internal static class Poisson
{
    /// <summary>One draw.</summary>
    /// <param name="random">The stream.</param>
    /// <param name="mean">Mean number of events, below 2³¹; 0 or less gives 0.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Draw(ref RandomStream random, double mean)
    {
        if (mean >= PoissonTable.End)
        {
            // only the copy's address is passed on, so that the caller's state stays in registers
            RandomStream copy = random;
            double many = Reject(ref copy, mean);
            random = copy;
            return many;
        }
        int table = (int)(mean * (1 / PoissonTable.Step));
        double rest = mean - table * PoissonTable.Step;
        int count = table > 0 ? PoissonTable.Draw(ref random, table) : 0;
        for (double waited = random.NextExponential(); waited < rest; waited += random.NextExponential())
        {
            count++;
        }
        return count;
    }

    private static double Reject(ref RandomStream random, double mean)
    {
        double b = 0.931 + 2.53 * Math.Sqrt(mean);
        double a = -0.059 + 0.02483 * b;
        double sure = 0.9277 - 3.6224 / (b - 2);
        while (true)
        {
            double u = random.NextUniform() - 0.5;
            double v = random.NextUniform();
            double distance = 0.5 - Math.Abs(u);
            double k = Math.Floor((2 * a / distance + b) * u + mean + 0.43);
            if (distance >= 0.07 && v <= sure)
            {
                return k;
            }
            if (k < 0 || (distance < 0.013 && v > distance))
            {
                continue;
            }
            double inverseAlpha = 1.1239 + 1.1328 / (b - 3.4);
            double hat = Math.Log(v * inverseAlpha / (a / (distance * distance) + b));
            if (hat <= k * Math.Log(mean) - mean - LogFactorial.Of((int)k))
            {
                return k;
            }
        }
    }
}
