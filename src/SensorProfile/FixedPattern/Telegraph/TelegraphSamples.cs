namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>The samples of a pixel, prepared once for all level searches of any kind and number of steps.</summary>
internal sealed class TelegraphSamples
{
    private const double Rounding = 1e-9; // of sums taken in a different order

    /// <summary>Computes sums and weights; the samples are sorted only when a search needs it.</summary>
    /// <param name="groups">Sets of at least two frames.</param>
    public TelegraphSamples(SampleGroup[] groups)
    {
        Groups = groups;
        Squares = new double[groups.Length];
        Weights = new double[groups.Length];
        for (int g = 0; g < groups.Length; g++)
        {
            Frames += groups[g].Values.Length;
            Squares[g] = SumOfSquares(groups[g].Values);
        }
        double excess = Excess(Squares);
        for (int g = 0; g < groups.Length; g++)
        {
            Weights[g] = 1 / (groups[g].Variance + excess);
            Scatter += Weights[g] * Squares[g];
            CameraScatter += Squares[g] / groups[g].Variance;
            Floor += (groups[g].Values.Length - 1) * groups[g].Variance * Weights[g];
        }
        Floor = Floor * (Freedom - 1) / Freedom;
    }

    /// <summary>The sets.</summary>
    public SampleGroup[] Groups { get; }

    /// <summary>Number of frames in all sets.</summary>
    public int Frames { get; }

    /// <summary>Frames minus sets.</summary>
    public int Freedom => Frames - Groups.Length;

    /// <summary>Σ(x − mean of the set)² of each set.</summary>
    public double[] Squares { get; }

    /// <summary>1/(variance + the pixel's excess) of each set.</summary>
    public double[] Weights { get; }

    /// <summary>
    /// Q₀ = Σ(x − mean of the set)²/(variance + the pixel's excess): the scatter about one level per set.
    /// </summary>
    public double Scatter { get; }

    /// <summary>The same without the excess of the pixel.</summary>
    public double CameraScatter { get; }

    /// <summary>The part of <see cref="Scatter"/> that camera noise alone leaves after fitting a step.</summary>
    public double Floor { get; }

    /// <summary>For each set, its samples in descending order; of equal ones, the earlier first.</summary>
    public int[][] Order => field ??= [.. Groups.Select(g => Descending(g.Values))];

    /// <summary>For each set, H(0 … n): the sum of the highest samples, relative to the set mean.</summary>
    public double[][] Heights => field ??= [.. Groups.Select((g, k) => Cumulated(g.Values, Order[k]))];

    /// <summary>For each set, z²/n for every sum z of levels.</summary>
    public double[][] Shares => field ??= [.. Groups.Select(g => SquaresOver(g.Values.Length))];

    /// <summary>Σz² − (Σz)²/n of a set with the given numbers of samples at least one and two levels up.</summary>
    public double Spread(int group, int one, int two) => one + 3.0 * two - Shares[group][one + two];

    /// <summary>
    /// Lower limit of the share of <see cref="Scatter"/> that any division leaves: each set with its best step, and
    /// never less than <see cref="Floor"/>.
    /// </summary>
    /// <remarks>A step common to the sets lowers the scatter by (Σ w·s·H)²/Σ w·s²·D ≤ Σ w·H²/D (Cauchy and Schwarz), H
    /// the height of the division, D its <see cref="Spread"/>, s the scale of the step in the set; sets without scale
    /// do not count. For a pixel with mere noise, however strong, this limit is far from any evidence, so nearly all
    /// pixels need no search.</remarks>
    /// <param name="levels">2 or 3.</param> <param name="thermal">Whether the step grows with the dark signal.</param>
    public double MinShare(int levels, bool thermal)
    {
        double most = 0;
        for (int g = 0; g < Groups.Length; g++)
            if (!thermal || Groups[g].Thermal > 0)
                most += Weights[g] * MaxAlone(g, levels);
        return Math.Max(Scatter - most * (1 + Rounding), Floor) / Scatter;
    }

    /// <summary>The largest H²/D of a set.</summary>
    private double MaxAlone(int g, int levels)
    {
        double[] heights = Heights[g];
        double most = 0;
        for (int one = 1; one < heights.Length - 1; one++)
        for (int two = 0, last = levels == 3 ? one : 0; two <= last; two++)
        {
            double height = heights[one] + heights[two];
            most = Math.Max(most, height * height / Spread(g, one, two));
        }
        return most;
    }

    /// <summary>
    /// Variance of the pixel above the expected one, common to all sets: the mean of s² − expected, weighted by the
    /// errors of the variances, so that the quiet sets dominate.
    /// </summary>
    /// <param name="squares">Sum of squares of each set.</param>
    public double Excess(double[] squares)
    {
        double excess = 0;
        for (int round = 0; round < 4; round++)
        {
            double sum = 0,
                weight = 0;
            for (int g = 0; g < Groups.Length; g++)
            {
                double w = 1 / (Groups[g].Variance + excess);
                sum += w * w * (squares[g] - (Groups[g].Values.Length - 1) * Groups[g].Variance);
                weight += w * w * (Groups[g].Values.Length - 1);
            }
            excess = Math.Max(0, sum / weight);
        }
        return excess;
    }

    private static int[] Descending(double[] values)
    {
        var order = new int[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            int at = i;
            // insertion sort: sets are short, so nothing is faster
            for (; at > 0 && values[order[at - 1]] < values[i]; at--)
                order[at] = order[at - 1];
            order[at] = i;
        }
        return order;
    }

    private static double SumOfSquares(double[] values)
    {
        double mean = values.Average(),
            sum = 0;
        foreach (double value in values)
            sum += (value - mean) * (value - mean);
        return sum;
    }

    private static double[] Cumulated(double[] values, int[] order)
    {
        double mean = values.Average();
        double[] heights = new double[values.Length + 1];
        for (int j = 0; j < values.Length; j++)
            heights[j + 1] = heights[j] + values[order[j]] - mean;
        return heights;
    }

    private static double[] SquaresOver(int count)
    {
        double[] shares = new double[2 * count + 1];
        for (int z = 0; z < shares.Length; z++)
            shares[z] = (double)z * z / count;
        return shares;
    }
}
