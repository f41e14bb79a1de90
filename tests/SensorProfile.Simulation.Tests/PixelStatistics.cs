namespace SensorProfile.Simulation.Tests;

/// <summary>Brute-force statistics of rendered frames, in double precision.</summary>
internal static class PixelStatistics
{
    public static double Mean(ushort[] a) => a.Average(v => (double)v);

    public static double Median(ushort[] a)
    {
        ushort[] sorted = [.. a.Order()];
        return 0.5 * (sorted[(a.Length - 1) / 2] + sorted[a.Length / 2]);
    }

    /// <summary>½·variance of A − B: the temporal variance.</summary>
    public static double PairVariance(ushort[] a, ushort[] b)
    {
        double n = a.Length,
            sum = 0,
            squares = 0;
        for (int i = 0; i < a.Length; i++)
        {
            double d = (double)a[i] - b[i];
            sum += d;
            squares += d * d;
        }
        return (squares - sum * sum / n) / (n - 1) / 2;
    }

    /// <summary>Variance over the pixels of one frame.</summary>
    public static double Variance(ushort[] a)
    {
        double mean = Mean(a);
        return a.Sum(v => (v - mean) * (v - mean)) / (a.Length - 1);
    }

    public static double[] RowMeans(ushort[] a, int width) =>
        [.. Enumerable.Range(0, a.Length / width).Select(r => a.Skip(r * width).Take(width).Average(v => (double)v))];

    public static double[] ColumnMeans(ushort[] a, int width) =>
        [
            .. Enumerable
                .Range(0, width)
                .Select(c => Enumerable.Range(0, a.Length / width).Average(r => (double)a[r * width + c])),
        ];

    public static double Variance(double[] a)
    {
        double mean = a.Average();
        return a.Sum(v => (v - mean) * (v - mean)) / (a.Length - 1);
    }

    /// <summary>Correlation of the difference of two frames between neighbours along the rows.</summary>
    public static double NeighbourCorrelation(ushort[] a, ushort[] b, int width)
    {
        double[] d = [.. a.Select((v, i) => (double)v - b[i])];
        double mean = d.Average(),
            sum = 0,
            squares = 0;
        long pairs = 0;
        for (int i = 0; i + 1 < d.Length; i++)
        {
            if ((i + 1) % width != 0)
            {
                sum += (d[i] - mean) * (d[i + 1] - mean);
                pairs++;
            }
            squares += (d[i] - mean) * (d[i] - mean);
        }
        return sum / pairs / (squares / d.Length);
    }
}
