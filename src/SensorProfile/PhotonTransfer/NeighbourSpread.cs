using SensorProfile.Pixels;

namespace SensorProfile.PhotonTransfer;

/// <summary>How much neighbouring pixels of one colour differ along the rows of a mean frame.</summary>
/// <param name="Mean">Mean level of the channel, ADU.</param>
/// <param name="Variance">Half the mean square of the clipped differences, ADU²: fixed pattern plus the noise left in
/// the mean.</param>
/// <param name="Pairs">Number of differences used.</param>
internal readonly record struct NeighbourSpread(double Mean, double Variance, long Pairs)
{
    /// <param name="map">A mean frame, row by row, ADU.</param>
    /// <param name="width">Its width, px.</param>
    /// <param name="mosaic">Filter array.</param>
    /// <param name="channel">Channel of the filter array.</param>
    /// <param name="clipSigmas">Differences beyond this many standard deviations are left out.</param>
    public static NeighbourSpread Measure(float[] map, int width, ColourMosaic mosaic, int channel, double clipSigmas)
    {
        double limit = double.PositiveInfinity;
        Sums sums = default;
        // the first pass still contains the outliers; the clip settles in the next two
        for (int pass = 0; pass < 3; pass++)
        {
            sums = Accumulate(map, width, mosaic, channel, limit);
            if (sums.Pairs == 0)
                return default;
            limit = clipSigmas * clipSigmas * sums.Squares / sums.Pairs;
        }
        return new(sums.Level / sums.Pixels, sums.Squares / sums.Pairs / 2, sums.Pairs);
    }

    private static Sums Accumulate(float[] map, int width, ColourMosaic mosaic, int channel, double squareLimit)
    {
        int step = mosaic.Period,
            firstColumn = channel % step,
            height = map.Length / width;
        Sums sums = default;
        for (int row = channel / step; row < height; row += step)
        {
            ReadOnlySpan<float> line = map.AsSpan(row * width, width);
            for (int column = firstColumn; column < width; column += step)
            {
                sums.Level += line[column];
                sums.Pixels++;
                if (column + step >= width)
                    continue;
                double d = (double)line[column] - line[column + step];
                if (d * d > squareLimit)
                    continue;
                sums.Squares += d * d;
                sums.Pairs++;
            }
        }
        return sums;
    }

    private struct Sums
    {
        public double Level,
            Squares;
        public long Pixels,
            Pairs;
    }
}
