using System.Numerics;
using System.Runtime.InteropServices;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Distribution of a sum over a grid of equal cells about 0; sums beyond the ends are dropped, so the cells add up to 1
/// or less.
/// </summary>
/// <param name="half">Cells from 0 to either end.</param>
internal sealed class SumGrid(int half)
{
    private readonly double[] cells = new double[2 * half + 1];
    private int from, // cells in use: from here
        to; // to before here

    /// <summary>Clears the grid.</summary>
    internal void Clear()
    {
        cells.AsSpan(from, to - from).Clear();
        (from, to) = (0, 0);
    }

    /// <summary>Sets it to a sum that always has the same value.</summary>
    /// <param name="place">The sum, in cells from 0.</param>
    internal void SetTo(double place)
    {
        Clear();
        Add(place, 1);
    }

    /// <summary>Adds a value, shared between two cells so that the mean is kept and nothing jumps.</summary>
    /// <param name="place">The value, in cells from 0.</param>
    /// <param name="weight">Its share.</param>
    internal void Add(double place, double weight)
    {
        double down = Math.Floor(place + half);
        if (!(down >= 0 && down < cells.Length - 1))
            return;
        int cell = (int)down;
        double above = place + half - down;
        cells[cell] += weight * (1 - above);
        cells[cell + 1] += weight * above;
        (from, to) = to == 0 ? (cell, cell + 2) : (Math.Min(from, cell), Math.Max(to, cell + 2));
    }

    /// <summary>
    /// Sets it to the distribution of the sum of two independent ones, neither of which is this grid.
    /// </summary>
    internal void SetToSum(SumGrid one, SumGrid other)
    {
        Clear();
        // the one over fewer cells is walked cell by cell
        (SumGrid few, SumGrid many) = one.to - one.from < other.to - other.from ? (one, other) : (other, one);
        (from, to) = (Math.Max(0, few.from + many.from - half), Math.Min(cells.Length, few.to + many.to - 1 - half));
        if (to <= from)
        {
            (from, to) = (0, 0);
            return;
        }
        for (int i = few.from; i < few.to; i++)
        {
            if (few.cells[i] == 0)
                continue;
            int first = Math.Max(many.from, half - i),
                count = Math.Min(many.to, cells.Length + half - i) - first;
            if (count > 0)
                AddScaled(many.cells.AsSpan(first, count), few.cells[i], cells.AsSpan(i + first - half, count));
        }
    }

    /// <summary>Share of the sums within a distance of 0; a cell at exactly that distance counts by half.</summary>
    /// <param name="distance">In cells, less than the distance to either end.</param>
    internal double Within(int distance)
    {
        double inside = (cells[half - distance] + cells[half + distance]) / 2;
        for (int i = half - distance + 1; i < half + distance; i++)
            inside += cells[i];
        return inside;
    }

    /// <summary>
    /// For each value on the grid, the share <see cref="Within"/> of this sum plus that value; the share for the sum
    /// with another grid is then a scalar product with that grid (<see cref="Mean"/>).
    /// </summary>
    /// <param name="distance">In cells.</param>
    /// <param name="shares">One for each cell.</param>
    internal void WithinBeside(int distance, Span<double> shares)
    {
        Span<double> below = stackalloc double[cells.Length + 1]; // what lies in the cells before each
        for (int i = 0; i < cells.Length; i++)
            below[i + 1] = below[i] + cells[i];
        for (int i = 0; i < shares.Length; i++)
        {
            int low = half - distance - (i - half),
                high = low + 2 * distance;
            shares[i] =
                below[Math.Clamp(high + 1, 0, cells.Length)]
                - below[Math.Clamp(low, 0, cells.Length)]
                - (At(low) + At(high)) / 2;
        }
    }

    /// <summary>Mean of a function of the sum: Σ of each cell's share times its value.</summary>
    internal double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        for (int i = from; i < to; i++)
            sum += cells[i] * values[i];
        return sum;
    }

    private double At(int cell) => cell >= 0 && cell < cells.Length ? cells[cell] : 0;

    /// <summary>to += scale·from, cell by cell: the same bits at any vector width.</summary>
    private static void AddScaled(ReadOnlySpan<double> from, double scale, Span<double> to)
    {
        ReadOnlySpan<Vector<double>> many = MemoryMarshal.Cast<double, Vector<double>>(from);
        Span<Vector<double>> sums = MemoryMarshal.Cast<double, Vector<double>>(to);
        for (int i = 0; i < many.Length; i++)
            sums[i] += scale * many[i];
        for (int i = many.Length * Vector<double>.Count; i < from.Length; i++)
            to[i] += scale * from[i];
    }
}
