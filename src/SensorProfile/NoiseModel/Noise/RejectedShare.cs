using System.Numerics;
using System.Runtime.InteropServices;
using MathNet.Numerics.Distributions;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Share of the places of a dithered stack that rejects outliers whose residual exceeds a limit; the pixels of one part of
/// the sensor.
/// </summary>
/// <remarks>
/// k pixels meet at a place, drawn independently. A pixel stands out when its residual lies farther from the middle than a
/// quarter of the scatter of a sample (and than most ordinary residuals). With h of those among k, P(|Σx| > kL) = Σ_h
/// B(h; k, p)·P_h: each leaves the part of itself that a stack with h outliers leaves (<see cref="ClippedMean.With"/>; the
/// MAD and the median count outliers and hardly ask how far they lie), their sum is the h-fold convolution of that
/// distribution, and the k − h others, of which nothing is rejected, add like noise. Convolved on a grid of kL/32; a sum
/// beyond 1.5 times the threshold counts as beyond for good. The few places with more outliers than matter count like those
/// with the most that do; all with more than twelve count as beyond, the safe side. Held against a pixel-level Monte Carlo in the tests.
/// </remarks>
internal sealed class RejectedShare(ClippedMean clip, int positions, double limit)
{
    private const double Negligible = 3e-6, // share of all places
        StandsOut = 0.25, // of the scatter of a sample
        Ordinary = 2.5, // times the scatter of ordinary residuals
        Alike = 0.08; // of a residual
    private const int MaxOutliers = 12;
    private const int CellsToThreshold = 32,
        Half = CellsToThreshold * 3 / 2; // cells from 0 to the end of the grid

    private readonly double cell = positions * limit / CellsToThreshold;

    /// <summary>The share.</summary>
    /// <param name="pixels">Classes of the part: weights in shares of any sum, distances from the middle pixel and
    /// deviations of a sample, e-.</param>
    /// <param name="unit">Scatter of the samples of typical pixels, e-.</param>
    /// <param name="spread">Scatter of their residuals alone, e-.</param>
    /// <param name="shift">What the middle pixel itself leaves, e-.</param>
    /// <param name="part">Share of the sensor that this part is, 0…1: how finely it has to be known.</param>
    internal double Beyond(IReadOnlyList<Member> pixels, double unit, double spread, double shift, double part = 1)
    {
        double farthest = Math.Max(StandsOut * unit, Ordinary * spread);
        Member[] outlying = [.. AlikePooled(pixels.Where(p => Math.Abs(p.Excess) > farthest))],
            others = [.. pixels.Where(p => Math.Abs(p.Excess) <= farthest)];
        double p = outlying.Sum(o => o.Weight) / pixels.Sum(o => o.Weight);
        int most = OutliersThatMatter(p, Negligible / part);
        double[] other = Whole(others),
            rest = Powers(other, positions - most, shift);
        double more = Math.Max(0, 1 - Binomial.CDF(p, positions, most)),
            share = 0;
        for (int h = most; h >= 0; h--)
        {
            double beyond = h > 0 ? Together(rest, outlying, h, unit) : OutOfLimit(rest);
            share += Binomial.PMF(p, positions, h) * beyond;
            if (h == most)
                share += more * (most < MaxOutliers ? beyond : 1);
            if (h > 0)
                rest = Convolved(rest, other);
        }
        return Math.Min(1, share);
    }

    /// <summary>
    /// Of places with so many outliers. The samples of a place have one MAD and one median: where one outlier leaves much,
    /// all do, so they are added quantile by quantile.
    /// </summary>
    private double Together(double[] rest, Member[] outlying, int count, double unit)
    {
        double[][] one = Distribution(outlying, clip.With(count), unit);
        double share = 0;
        double[] sum = new double[rest.Length],
            before = new double[rest.Length];
        for (int q = 0; q < one.Length; q++)
        {
            Convolve(rest, one[q], sum);
            for (int i = 1; i < count; i++)
            {
                (before, sum) = (sum, before);
                Convolve(before, one[q], sum);
            }
            share += ClippedMean.PlaceShares[q] * OutOfLimit(sum);
        }
        return share;
    }

    /// <summary>Pixels of nearly the same residual as one class, at their mean.</summary>
    private static IEnumerable<Member> AlikePooled(IEnumerable<Member> pixels) =>
        pixels
            .GroupBy(p => (Math.Sign(p.Excess), (int)Math.Floor(Math.Log(Math.Abs(p.Excess)) / Alike)))
            .Select(group =>
            {
                double weight = group.Sum(p => p.Weight);
                return weight > 0
                    ? new Member(
                        weight,
                        group.Sum(p => p.Weight * p.Excess) / weight,
                        group.Sum(p => p.Weight * p.Deviation) / weight
                    )
                    : group.First();
            });

    private int OutliersThatMatter(double p, double negligible)
    {
        int most = 0;
        while (most < Math.Min(positions, MaxOutliers) && 1 - Binomial.CDF(p, positions, most) > negligible)
            most++;
        return most;
    }

    /// <summary>The sum of so many pixels, from what the middle pixels of the place leave.</summary>
    private double[] Powers(double[] one, int count, double shift)
    {
        double[] sum = new double[2 * Half + 1];
        Add(sum, positions * shift, 1);
        for (int i = 0; i < count; i++)
            sum = Convolved(sum, one);
        return sum;
    }

    /// <summary>The distribution of one of the pixels that are left whole, on the grid.</summary>
    private double[] Whole(Member[] pixels)
    {
        double[] cells = new double[2 * Half + 1];
        double whole = pixels.Sum(p => p.Weight);
        foreach (Member pixel in pixels)
            Add(cells, pixel.Excess, pixel.Weight / whole);
        return cells;
    }

    /// <summary>
    /// What one of the pixels leaves in the sum, on the grid, for each quantile of the places; what lies beyond the grid is
    /// missing.
    /// </summary>
    private double[][] Distribution(Member[] pixels, ClippedMean response, double unit)
    {
        double[][] cells =
        [
            .. Enumerable.Range(0, ClippedMean.PlaceShares.Length).Select(_ => new double[2 * Half + 1]),
        ];
        Span<double> parts = stackalloc double[ClippedMean.PlaceShares.Length];
        double whole = pixels.Sum(p => p.Weight);
        foreach (Member pixel in pixels)
        {
            response.PartsLeft(pixel.Excess / unit, pixel.Deviation / unit, parts);
            for (int q = 0; q < parts.Length; q++)
                Add(cells[q], parts[q] * pixel.Excess, pixel.Weight / whole);
        }
        return cells;
    }

    /// <summary>Shared between two cells, so that the mean stays and nothing jumps.</summary>
    private void Add(double[] cells, double electrons, double weight)
    {
        double place = electrons / cell + Half,
            down = Math.Floor(place);
        if (!(down >= 0 && down < cells.Length - 1))
            return;
        cells[(int)down] += weight * (down + 1 - place);
        cells[(int)down + 1] += weight * (place - down);
    }

    private static double[] Convolved(double[] sum, double[] one)
    {
        double[] cells = new double[sum.Length];
        Convolve(sum, one, cells);
        return cells;
    }

    /// <summary>The distribution of the sum of two; the one over fewer cells is walked cell by cell.</summary>
    private static void Convolve(double[] sum, double[] one, double[] cells)
    {
        cells.AsSpan().Clear();
        (int From, int To) ofSum = Used(sum),
            ofOne = Used(one);
        (double[] few, double[] many) = (sum, one);
        if (ofOne.To - ofOne.From < ofSum.To - ofSum.From)
            ((few, many), (ofSum, ofOne)) = ((one, sum), (ofOne, ofSum));
        for (int i = ofSum.From; i < ofSum.To; i++)
        {
            if (few[i] == 0)
                continue;
            int first = Math.Max(ofOne.From, Half - i),
                count = Math.Min(ofOne.To, cells.Length + Half - i) - first;
            if (count > 0)
                AddScaled(many.AsSpan(first, count), few[i], cells.AsSpan(i + first - Half, count));
        }
    }

    /// <summary>From the first cell in use to behind the last.</summary>
    private static (int From, int To) Used(ReadOnlySpan<double> cells) =>
        (Math.Max(0, cells.IndexOfAnyExcept(0.0)), 1 + cells.LastIndexOfAnyExcept(0.0));

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

    /// <summary>What lies beyond the threshold, the grid's missing share included; the cell at the threshold by half.</summary>
    private static double OutOfLimit(double[] sum)
    {
        double inside = (sum[Half - CellsToThreshold] + sum[Half + CellsToThreshold]) / 2;
        for (int i = Half - CellsToThreshold + 1; i < Half + CellsToThreshold; i++)
            inside += sum[i];
        return Math.Clamp(1 - inside, 0, 1);
    }

    /// <summary>A class of pixels.</summary>
    /// <param name="Weight">Its share.</param>
    /// <param name="Excess">Residual from the middle pixel, before anything is rejected, e-.</param>
    /// <param name="Deviation">Standard deviation of its samples, e-.</param>
    internal readonly record struct Member(double Weight, double Excess, double Deviation);
}
