using SensorProfile.Pixels;

namespace SensorProfile.PhotonTransfer;

/// <summary>How much neighbours of one colour in a row differ in a mean frame.</summary>
/// <param name="Mean">Mean level of the channel, ADU.</param>
/// <param name="TotalVariance">Half the mean square of the clipped differences, ADU²: fixed pattern and what is left of the noise.</param>
/// <param name="PatternVariance">The same less the noise left in the mean of the frames, σ²/L, ADU²; may fall below zero by chance.</param>
/// <param name="Pairs">Differences behind it.</param>
internal readonly record struct NeighbourSpread(double Mean, double TotalVariance, double PatternVariance, long Pairs)
{
    public static NeighbourSpread Of(PixelMoments moments, ColourMosaic mosaic, int channel, double clipSigmas)
    {
        double limit = double.PositiveInfinity;
        Sums sums = default;
        for (int pass = 0; pass < 3; pass++)          // the width settles in two passes; the first sees the outliers too
        {
            sums = Accumulate(moments, mosaic, channel, limit);
            if (sums.Pairs == 0) return default;
            limit = clipSigmas * clipSigmas * sums.Squares / sums.Pairs;
        }
        double total = sums.Squares / sums.Pairs / 2;
        return new(sums.Level / sums.Pixels, total, total - sums.Noise / sums.Pairs / moments.Frames, sums.Pairs);
    }

    private static Sums Accumulate(PixelMoments moments, ColourMosaic mosaic, int channel, double squareLimit)
    {
        int step = mosaic.Period, firstRow = channel / step, firstColumn = channel % step;
        Sums sums = default;
        for (int row = firstRow; row < moments.Height; row += step)
        {
            ReadOnlySpan<float> mean = moments.Mean.AsSpan(row * moments.Width, moments.Width);
            ReadOnlySpan<float> variance = moments.Variance.AsSpan(row * moments.Width, moments.Width);
            for (int column = firstColumn; column < moments.Width; column += step)
            {
                sums.Level += mean[column];
                sums.Pixels++;
                if (column + step >= moments.Width) continue;
                double d = (double)mean[column] - mean[column + step];
                if (d * d > squareLimit) continue;
                sums.Squares += d * d;
                sums.Noise += (variance[column] + variance[column + step]) / 2.0;
                sums.Pairs++;
            }
        }
        return sums;
    }

    private struct Sums
    {
        public double Level, Squares, Noise;
        public long Pixels, Pairs;
    }
}
