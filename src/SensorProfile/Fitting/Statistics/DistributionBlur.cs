using MathNet.Numerics.Distributions;

namespace SensorProfile.Fitting.Statistics;

/// <summary>A map's histogram and how the noise of its pixels blurs it: the matrix K of <see cref="NoiseFreeDistribution"/>.</summary>
internal sealed class DistributionBlur
{
    private const int Steps = 200;
    private const int PerNoise = 3; // bins per noise of a typical pixel
    private const int MaxBins = 4096;
    private const int Reach = 4; // noises to either side
    private const int Neighbours = 50; // pixels that say how wide the blur is about a bin
    private const double MinWidth = 0.7,
        MaxWidth = 3; // of the blur, in noises of a typical pixel: noisier pixels are not worth the reach
    private const double Tiny = 1e-15;

    private readonly double[][] columns; // where the pixels of a bin are seen, from its reach below to its reach above

    private DistributionBlur(double low, double width, int[] counts, double[] noises)
    {
        (Low, Width, Counts) = (low, width, counts);
        columns = [.. noises.Select(noise => Column(noise / width))];
    }

    /// <summary>Bins at the upper end that no quantile is read from.</summary>
    public static int Margin => Reach * PerNoise;

    /// <summary>Lower end of the first bin, e-/px/s.</summary>
    public double Low { get; }

    /// <summary>Width of a bin, e-/px/s.</summary>
    public double Width { get; }

    /// <summary>Pixels of each bin.</summary>
    public int[] Counts { get; }

    /// <summary>Counts the pixels; null where the noise is too small against the range to matter.</summary>
    public static DistributionBlur? Measure(
        ReadOnlySpan<float> rates,
        ReadOnlySpan<float> uncertainties,
        double noise,
        double lowest,
        double top
    )
    {
        double width = noise / PerNoise,
            margin = Reach * noise;
        if (!(noise > 0) || !(top > lowest) || (top - lowest + 2 * margin) / width > MaxBins)
            return null;
        double low = lowest - margin;
        int bins = (int)((top - lowest + 2 * margin) / width) + 1;
        int[] counts = new int[bins];
        double[] squares = new double[bins];
        for (int i = 0; i < rates.Length; i++)
        {
            if (float.IsNaN(rates[i]) || (int)((rates[i] - low) / width) is not (>= 0 and var bin) || bin >= bins)
                continue;
            counts[bin]++;
            double own = float.IsNaN(uncertainties[i]) ? noise : uncertainties[i];
            squares[bin] += own * own;
        }
        return new DistributionBlur(low, width, counts, Noises(counts, squares, noise));
    }

    /// <summary>What was there before the blur: shares of the pixels by bin, with the same sum as those that are seen.</summary>
    public double[] Undo(double[] seen)
    {
        double[] found = [.. seen.Select(s => s + 1e-9)],
            blurred = new double[seen.Length];
        for (int step = 0; step < Steps; step++)
        {
            Apply(found, blurred);
            for (int i = 0; i < seen.Length; i++)
                blurred[i] = seen[i] / Math.Max(blurred[i], Tiny);
            for (int j = 0; j < seen.Length; j++)
                found[j] *= ApplyTransposed(j, blurred);
        }
        double scale = seen.Sum() / found.Sum();
        return [.. found.Select(f => f * scale)];
    }

    /// <summary>
    /// Pixels of given true shares as noise drawn anew spreads them over the bins: the pixels stay, only their noise changes.
    /// </summary>
    public double[] Draw(double[] shares, long pixels, Random random)
    {
        double[] drawn = new double[shares.Length];
        for (int j = 0; j < shares.Length; j++)
        {
            double those = shares[j] * pixels;
            double[] column = columns[j],
                parts = [.. column.Select(part => those * part > 0 ? Poisson.Sample(random, those * part) : 0)];
            double sum = parts.Sum();
            int first = j - column.Length / 2;
            for (int k = 0; k < parts.Length; k++)
                if (first + k >= 0 && first + k < drawn.Length)
                    drawn[first + k] += sum > 0 ? parts[k] * those / sum : those * column[k];
        }
        return drawn;
    }

    /// <summary>K f: what is seen of true shares.</summary>
    private void Apply(double[] from, double[] to)
    {
        Array.Clear(to);
        for (int j = 0; j < from.Length; j++)
        {
            double[] column = columns[j];
            int first = j - column.Length / 2,
                end = Math.Min(column.Length, to.Length - first);
            for (int k = Math.Max(0, -first); k < end; k++)
                to[first + k] += column[k] * from[j];
        }
    }

    /// <summary>Element j of Kᵀ r.</summary>
    private double ApplyTransposed(int j, double[] ratio)
    {
        double[] column = columns[j];
        int first = j - column.Length / 2,
            end = Math.Min(column.Length, ratio.Length - first);
        double sum = 0;
        for (int k = Math.Max(0, -first); k < end; k++)
            sum += column[k] * ratio[first + k];
        return sum;
    }

    /// <summary>A normal curve of unit sum, its width in bins.</summary>
    private static double[] Column(double width)
    {
        int half = (int)Math.Ceiling(Reach * width);
        double[] column = new double[2 * half + 1];
        for (int k = 0; k < column.Length; k++)
            column[k] = Math.Exp(-0.5 * Math.Pow((k - half) / width, 2));
        double total = column.Sum();
        return [.. column.Select(c => c / total)];
    }

    /// <summary>Root mean square of what the pixels about each bin state, over as many bins as hold enough of them.</summary>
    private static double[] Noises(int[] counts, double[] squares, double noise)
    {
        double[] noises = new double[counts.Length];
        for (int j = 0; j < counts.Length; j++)
        {
            double sum = squares[j];
            long those = counts[j];
            for (int reach = 1; those < Neighbours && reach < counts.Length; reach++)
            {
                if (j - reach >= 0)
                    (sum, those) = (sum + squares[j - reach], those + counts[j - reach]);
                if (j + reach < counts.Length)
                    (sum, those) = (sum + squares[j + reach], those + counts[j + reach]);
            }
            double own = those > 0 ? Math.Sqrt(sum / those) : noise;
            noises[j] = Math.Clamp(own, MinWidth * noise, MaxWidth * noise);
        }
        return noises;
    }
}
