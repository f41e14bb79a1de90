using BenchmarkDotNet.Attributes;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Benchmarks.Simulation;

/// <summary>Sixteen thousand draws at one mean.</summary>
public class PoissonDraws
{
    private const int Draws = 1 << 14;
    private readonly double[] _draws = new double[Draws];

    /// <summary>Mean of the distribution.</summary>
    [Params(0.1, 1, 9, 30, 1000, 50000)]
    public double Mean { get; set; }

    /// <summary>All of them from one stream.</summary>
    [Benchmark(OperationsPerInvoke = Draws)]
    public void Draw()
    {
        var random = RandomStream.For(1, Purpose.Row);
        for (int i = 0; i < _draws.Length; i++)
        {
            _draws[i] = Poisson.Draw(ref random, Mean);
        }
    }
}
