namespace SensorProfile.DarkCurrent.Levels;

/// <summary>Level of a square block of pixels as a quadratic surface, for glow that changes inside the block.</summary>
/// <remarks>
/// Least squares on the six products of Legendre polynomials up to the second degree, which are orthogonal on the grid of
/// pixel centres but for O(1/side²). Pixels beyond the reach are replaced by the surface and the fit is repeated, which
/// converges to the least-squares fit of the others.
/// </remarks>
internal sealed class BlockSurface
{
    /// <summary>Coefficients of the surface.</summary>
    public const int Terms = 6;

    // sub-squares whose centres stand for the block
    private const int PartsPerSide = 4;

    private readonly int side;
    private readonly double[][] basis; // [term][pixel], of unit length

    /// <param name="side">px.</param>
    public BlockSurface(int side)
    {
        this.side = side;
        double[] linear = [.. Enumerable.Range(0, side).Select(i => (i + 0.5 - side / 2.0) / side)];
        double square = linear.Average(x => x * x);
        double[] ones = [.. linear.Select(_ => 1.0)],
            quadratic = [.. linear.Select(x => x * x - square)];
        basis =
        [
            Product(ones, ones),
            Product(linear, ones),
            Product(ones, linear),
            Product(quadratic, ones),
            Product(linear, linear),
            Product(ones, quadratic),
        ];
    }

    /// <summary>Moves a surface by the least-squares fit of what it leaves within the reach.</summary>
    /// <param name="values">Pixels of the block, row by row.</param>
    /// <param name="surface">Changed: the value of the surface at every pixel.</param>
    /// <param name="reach">Pixels that are farther off count as if they lay on the surface.</param>
    public void Approach(ReadOnlySpan<double> values, Span<double> surface, double reach)
    {
        Span<double> coefficients = stackalloc double[Terms];
        coefficients.Clear();
        for (int i = 0; i < values.Length; i++)
        {
            double off = values[i] - surface[i];
            if (Math.Abs(off) < reach)
                for (int term = 0; term < Terms; term++)
                    coefficients[term] += basis[term][i] * off;
        }
        for (int i = 0; i < surface.Length; i++)
        for (int term = 0; term < Terms; term++)
            surface[i] += coefficients[term] * basis[term][i];
    }

    /// <summary>The surface at the centres of equal parts of the block.</summary>
    public IEnumerable<double> Parts(double[] surface)
    {
        for (int y = 0; y < PartsPerSide; y++)
        for (int x = 0; x < PartsPerSide; x++)
            yield return surface[
                (2 * y + 1) * side / (2 * PartsPerSide) * side + (2 * x + 1) * side / (2 * PartsPerSide)
            ];
    }

    private double[] Product(double[] alongX, double[] alongY)
    {
        double length = Math.Sqrt(alongX.Sum(x => x * x) * alongY.Sum(y => y * y));
        return [.. Enumerable.Range(0, side * side).Select(i => alongX[i % side] * alongY[i / side] / length)];
    }
}
