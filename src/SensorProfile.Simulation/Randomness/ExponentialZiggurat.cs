using System.Runtime.CompilerServices;

namespace SensorProfile.Simulation.Randomness;

/// <summary>Draws from the exponential distribution of mean 1, exact to the resolution of 53 bits.</summary>
/// <remarks>
/// Ziggurat of 256 layers (Marsaglia and Tsang 2000, J. Stat. Softw. 5, 8); beyond R the distribution is the same
/// again, shifted by R.
/// </remarks>
internal static class ExponentialZiggurat
{
    private const int Layers = 256;
    private const double R = 7.69711747013104972;
    private const double V = 0.0039496598225815571993;
    private const double Scale = 1L << 53;

    private static readonly double[] Edges = BuildEdges();
    private static readonly double[] Heights = [.. Edges.Select(x => Math.Exp(-x))];
    private static readonly double[] Widths = [.. Edges.Take(Layers).Select(x => x / Scale)];
    private static readonly long[] Sure =
    [
        .. Enumerable.Range(0, Layers).Select(i => (long)(Edges[i + 1] / Edges[i] * Scale)),
    ];

    /// <summary>One draw.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Draw(ref RandomStream random)
    {
        ulong bits = random.Next();
        int layer = (int)(bits & 255);
        long position = (long)(bits >> 11);
        if (position < Sure[layer])
        {
            return position * Widths[layer];
        }
        // only the copy's address is passed on, so that the caller's state stays in registers
        RandomStream copy = random;
        double x = DrawSlowly(ref copy, layer, position);
        random = copy;
        return x;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static double DrawSlowly(ref RandomStream random, int layer, long position)
    {
        double moved = 0;
        while (true)
        {
            double x = position * Widths[layer];
            if (layer == 0)
            {
                moved += R;
            }
            else if (Heights[layer] + random.NextUniform() * (Heights[layer + 1] - Heights[layer]) < Math.Exp(-x))
            {
                return moved + x;
            }
            ulong bits = random.Next();
            layer = (int)(bits & 255);
            position = (long)(bits >> 11);
            if (position < Sure[layer])
            {
                return moved + position * Widths[layer];
            }
        }
    }

    private static double[] BuildEdges()
    {
        double[] edges = new double[Layers + 1];
        edges[0] = V / Math.Exp(-R);
        edges[1] = R;
        for (int i = 2; i < Layers; i++)
        {
            edges[i] = -Math.Log(Math.Exp(-edges[i - 1]) + V / edges[i - 1]);
        }
        return edges; // the last stays 0
    }
}
