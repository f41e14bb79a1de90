using MathNet.Numerics.Distributions;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Share of the places of a dithered stack that rejects outliers whose residual exceeds a limit; the pixels of one part of
/// the sensor.
/// </summary>
/// <remarks>
/// k pixels meet at a place, drawn independently. A pixel stands out when its residual lies farther from the middle
/// than a quarter of the scatter of a sample (and than most ordinary residuals). With h of those among k, P(|Σx| > kL)
/// = Σ_h B(h; k, p)·P_h: each leaves the part of itself that a stack with h outliers leaves
/// (<see cref="ClippedMean.With"/>; MAD and median depend on how many outliers there are, hardly on how far out they
/// lie), their sum is the h-fold convolution of that distribution, and the k − h others, none of which is rejected, add
/// like noise. Convolved on a grid of kL/32; sums beyond 1.5 times the threshold leave the grid and count as exceeding
/// it for good. The few places with more outliers than matter are treated like those with the most that do; all with
/// more than twelve count as exceeding, which is the safe side. Checked against a pixel-level Monte Carlo in the tests.
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
    /// <param name="part">Share of the sensor in this part, 0…1; it sets how precise the result has to be.</param>
    internal double Beyond(ReadOnlySpan<Member> pixels, double unit, double spread, double shift, double part = 1)
    {
        double farthest = Math.Max(StandsOut * unit, Ordinary * spread);
        SumGrid other = Whole(pixels, farthest);
        Member[] outlying = AlikePooled(pixels, farthest);
        double all = 0;
        foreach (Member pixel in pixels)
            all += pixel.Weight; // those too whose residual is no number: nothing is claimed of them
        double p = all > 0 ? Math.Min(1, outlying.Sum(o => o.Weight) / all) : 0;
        (int most, double more) = OutliersThatMatter(p, Negligible / part);

        SumGrid rest = Powers(other, positions - most, positions * shift),
            next = new(Half);
        double share = 0;
        for (int h = most; h >= 0; h--)
        {
            double beyond = 1 - (h > 0 ? Together(rest, outlying, h, unit) : rest.Within(CellsToThreshold));
            beyond = Math.Clamp(beyond, 0, 1);
            share += Binomial.PMF(p, positions, h) * beyond;
            if (h == most)
                share += more * (most < MaxOutliers ? beyond : 1);
            if (h > 0)
            {
                next.SetToSum(rest, other);
                (rest, next) = (next, rest);
            }
        }
        return Math.Min(1, share);
    }

    /// <summary>
    /// Share of the places with so many outliers that stays within the threshold. The samples of a place share one MAD
    /// and one median: where one outlier leaves much, all do, so they are added quantile by quantile.
    /// </summary>
    private double Together(SumGrid rest, ReadOnlySpan<Member> outlying, int count, double unit)
    {
        SumGrid[] one = Distribution(outlying, clip.With(count), unit);
        Span<double> withRest = stackalloc double[2 * Half + 1];
        rest.WithinBeside(CellsToThreshold, withRest);
        SumGrid sum = new(Half),
            before = new(Half);
        double inside = 0;
        for (int q = 0; q < one.Length; q++)
        {
            SumGrid all = one[q];
            for (int i = 1; i < count; i++)
            {
                sum.SetToSum(all, one[q]);
                (all, sum, before) = (sum, before, sum);
            }
            inside += ClippedMean.PlaceShares[q] * all.Mean(withRest);
        }
        return inside;
    }

    /// <summary>
    /// The outlying pixels; those of nearly the same residual are merged into one class, at their mean.
    /// </summary>
    private static Member[] AlikePooled(ReadOnlySpan<Member> pixels, double farthest)
    {
        var classes = new Dictionary<(int Sign, int Step), (double Weight, double Excess, double Deviation)>();
        foreach (Member pixel in pixels)
        {
            double far = Math.Abs(pixel.Excess);
            if (!(far > farthest && pixel.Weight > 0))
                continue;
            (int, int) key = (Math.Sign(pixel.Excess), (int)Math.Floor(Math.Log(far) / Alike));
            (double weight, double excess, double deviation) = classes.GetValueOrDefault(key);
            classes[key] = (
                weight + pixel.Weight,
                excess + pixel.Weight * pixel.Excess,
                deviation + pixel.Weight * pixel.Deviation
            );
        }
        return [.. classes.Values.Select(c => new Member(c.Weight, c.Excess / c.Weight, c.Deviation / c.Weight))];
    }

    /// <summary>
    /// The largest number of outliers at a place that matters, and the share of the places with more.
    /// </summary>
    private (int Most, double More) OutliersThatMatter(double p, double negligible)
    {
        int most = 0;
        double more = 1 - Binomial.PMF(p, positions, 0);
        while (most < Math.Min(positions, MaxOutliers) && more > negligible)
        {
            most++;
            more -= Binomial.PMF(p, positions, most);
        }
        return (most, Math.Max(0, more));
    }

    /// <summary>Distribution of the sum of so many pixels, on top of what the middle pixel leaves.</summary>
    private SumGrid Powers(SumGrid one, int count, double electrons)
    {
        SumGrid sum = new(Half),
            power = one,
            spare = new(Half),
            second = new(Half);
        sum.SetTo(electrons / cell);
        for (; count > 0; count >>= 1)
        {
            if ((count & 1) == 1)
            {
                spare.SetToSum(sum, power);
                (sum, spare) = (spare, sum);
            }
            if (count == 1)
                break;
            second.SetToSum(power, power);
            (power, second) = (second, power == one ? new(Half) : power);
        }
        return sum;
    }

    /// <summary>Distribution of one pixel of those that are not rejected.</summary>
    private SumGrid Whole(ReadOnlySpan<Member> pixels, double farthest)
    {
        double whole = 0;
        foreach (Member pixel in pixels)
            if (Math.Abs(pixel.Excess) <= farthest)
                whole += pixel.Weight;
        SumGrid grid = new(Half);
        foreach (Member pixel in pixels)
            if (Math.Abs(pixel.Excess) <= farthest)
                grid.Add(pixel.Excess / cell, pixel.Weight / whole);
        return grid;
    }

    /// <summary>What one of the pixels leaves in the sum for each quantile of the places.</summary>
    private SumGrid[] Distribution(ReadOnlySpan<Member> pixels, ClippedMean response, double unit)
    {
        Span<double> parts = stackalloc double[ClippedMean.PlaceShares.Length];
        SumGrid[] grids = new SumGrid[parts.Length];
        for (int q = 0; q < grids.Length; q++)
            grids[q] = new SumGrid(Half);
        double whole = 0;
        foreach (Member pixel in pixels)
            whole += pixel.Weight;
        foreach (Member pixel in pixels)
        {
            response.PartsLeft(pixel.Excess / unit, pixel.Deviation / unit, parts);
            for (int q = 0; q < parts.Length; q++)
                grids[q].Add(parts[q] * pixel.Excess / cell, pixel.Weight / whole);
        }
        return grids;
    }

    /// <summary>A class of pixels.</summary>
    /// <param name="Weight">Its share.</param>
    /// <param name="Excess">Residual from the middle pixel, before anything is rejected, e-.</param>
    /// <param name="Deviation">Standard deviation of its samples, e-.</param>
    internal readonly record struct Member(double Weight, double Excess, double Deviation);
}
