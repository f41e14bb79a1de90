using System.Runtime.CompilerServices;

namespace SensorProfile.Simulation.Randomness;

/// <summary>
/// Draws from Poisson distributions whose means are multiples of <see cref="Step"/>, one table look-up each.
/// </summary>
/// <remarks>
/// Alias tables (Walker 1977, ACM Trans. Math. Softw. 3, 253; built as in Vose 1991). The probabilities are exact to
/// 2⁻⁵⁷; counts of <see cref="Cells"/> and more are omitted, with a probability below 10⁻³² at the largest mean.
/// </remarks>
internal static class PoissonTable
{
    /// <summary>Difference between the means of neighbouring tables.</summary>
    public const double Step = 0.125;

    /// <summary>Means below this have a table.</summary>
    public const double End = 32;

    private const int Cells = 128;
    private const int CellBits = 7;
    private const int Tables = (int)(End / Step);

    private static readonly Cell[] All = Build();

    /// <summary>One draw from the table of mean <paramref name="number"/> × <see cref="Step"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Draw(ref RandomStream random, int number)
    {
        ulong bits = random.Next();
        int count = (int)(bits & (Cells - 1));
        ref Cell cell = ref All[number * Cells + count];
        return bits >> CellBits < cell.Own ? count : cell.Other;
    }

    private static Cell[] Build()
    {
        var all = new Cell[Tables * Cells];
        for (int number = 0; number < Tables; number++)
        {
            Fill(all.AsSpan(number * Cells, Cells), number * Step);
        }
        return all;
    }

    /// <summary>
    /// Shares every cell between its own count and one other, so that all cells are equally probable.
    /// </summary>
    private static void Fill(Span<Cell> cells, double mean)
    {
        const double whole = 1UL << (64 - CellBits);
        double[] left = new double[Cells];
        for (int k = 0; k < Cells; k++)
        {
            double log =
                mean > 0 ? k * Math.Log(mean) - mean - LogFactorial.Of(k)
                : k == 0 ? 0
                : double.NegativeInfinity;
            left[k] = Cells * Math.Exp(log);
        }
        var small = new Stack<int>(Enumerable.Range(0, Cells).Where(k => left[k] < 1));
        var large = new Stack<int>(Enumerable.Range(0, Cells).Where(k => left[k] >= 1));
        while (small.Count > 0 && large.Count > 0)
        {
            int less = small.Pop();
            int more = large.Pop();
            cells[less] = new Cell((ulong)(left[less] * whole), more);
            left[more] -= 1 - left[less];
            (left[more] < 1 ? small : large).Push(more);
        }
        foreach (int full in small.Concat(large)) // left over by rounding: full
        {
            cells[full] = new Cell((ulong)whole, full);
        }
    }

    /// <param name="Own">Out of 2⁵⁷; below it the cell gives its own count.</param>
    /// <param name="Other">The count given otherwise.</param>
    private readonly record struct Cell(ulong Own, int Other);
}
