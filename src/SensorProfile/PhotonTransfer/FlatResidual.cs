using SensorProfile.Pixels;

namespace SensorProfile.PhotonTransfer;

/// <summary>
/// What remains, beyond photon noise, when one half of the flats is corrected with the other half, in one channel.
/// </summary>
/// <param name="Pixels">Pixel to pixel, % of the mean signal.</param>
/// <param name="Areas">Over areas of <see cref="CellSide"/> px and larger, % of the mean signal.</param>
/// <remarks>
/// d = (A − p) − c·(B − p), with A and B the means of the halves, p the level without light and c the ratio of their
/// mean signals: the residual of flat A corrected with master flat B, times the signal, so the temporal noise in it is
/// on average σ²_A/n_A + c²·σ²_B/n_B however the light falls off. The variance of d is split over square cells. Within
/// the cells, less that noise, it is the pattern of single pixels; between the means of the cells, less what the pixels
/// within contribute, it is what changed over areas (lamp, moved dust). Pixels beyond 5 standard deviations are left
/// out. Standard uncertainties follow from the variances of normal samples, s²·√(2/n).
/// </remarks>
internal sealed record FlatResidual(Measurement Pixels, Measurement Areas)
{
    /// <summary>Side of a cell, px.</summary>
    public const int CellSide = 32;

    private const double ClipSigmas = 5;

    // a variance below this many standard uncertainties may be zero; what it could still be is then the uncertainty
    private const double Seen = 2;
    private const int MinCells = 9,
        MinPixels = 1000;

    /// <summary>Null without light, or on too few pixels.</summary>
    /// <param name="first">Mean of the first half, row by row, ADU.</param>
    /// <param name="second">Mean of the second half, row by row, ADU.</param>
    /// <param name="width">Width, px.</param>
    /// <param name="mosaic">Filter array.</param>
    /// <param name="channel">Channel of the filter array.</param>
    /// <param name="pedestal">Level without light, ADU.</param>
    /// <param name="noise">Temporal variance in the mean of each half, ADU².</param>
    /// <param name="pairs">Pairs of flats behind each of these variances.</param>
    public static FlatResidual? Measure(
        float[] first,
        float[] second,
        int width,
        ColourMosaic mosaic,
        int channel,
        double pedestal,
        (double First, double Second) noise,
        int pairs
    )
    {
        var difference = new Difference(first, second, width, mosaic, channel, pedestal);
        if (!(difference.Signal > 0) || !double.IsFinite(difference.Ratio))
            return null;
        Split split = difference.Clipped();
        if (split.Pixels < MinPixels || split.Cells < MinCells)
            return null;
        double temporal = noise.First + difference.Ratio * difference.Ratio * noise.Second,
            ofTemporal = temporal * Math.Sqrt(2.0 / ((double)pairs * split.Pixels)),
            ofWithin = split.Within * Math.Sqrt(2.0 / (split.Pixels - split.Cells)),
            ofBetween = split.Between * Math.Sqrt(2.0 / (split.Cells - 1));
        return new FlatResidual(
            Share(
                split.Within - temporal,
                Math.Sqrt(ofWithin * ofWithin + ofTemporal * ofTemporal),
                difference.Signal,
                split.Pixels,
                "half of the flats against the other half, pixel to pixel, photon noise removed"
            ),
            Share(
                split.Between - split.Within / split.PixelsInCell,
                ofBetween,
                difference.Signal,
                split.Cells,
                "half of the flats against the other half, areas of 32 × 32 px, noise removed"
            )
        );
    }

    private static Measurement Share(double variance, double uncertainty, double signal, long samples, string method)
    {
        double share = Math.Sqrt(Math.Max(0, variance)) / signal,
            doubt = variance > Seen * uncertainty
                ? uncertainty / (2 * share * signal * signal)
                : Math.Sqrt(uncertainty) / signal;
        return new Measurement(100 * share, 100 * doubt, "%", samples, method);
    }

    /// <summary>Variance of the differences, split within and between the cells.</summary>
    /// <param name="Within">Mean variance inside a cell, ADU².</param>
    /// <param name="Between">Variance of the means of the cells, ADU².</param>
    /// <param name="Pixels">Pixels used.</param>
    /// <param name="Cells">Cells used.</param>
    private readonly record struct Split(double Within, double Between, long Pixels, long Cells)
    {
        /// <summary>Mean number of pixels in a cell.</summary>
        public double PixelsInCell => (double)Pixels / Cells;
    }

    private readonly struct Difference
    {
        private readonly float[] first,
            second;
        private readonly int width,
            period,
            row0,
            column0;
        private readonly double offset;

        public Difference(float[] first, float[] second, int width, ColourMosaic mosaic, int channel, double pedestal)
        {
            (this.first, this.second, this.width) = (first, second, width);
            (period, row0, column0) = (mosaic.Period, channel / mosaic.Period, channel % mosaic.Period);
            double a = 0,
                b = 0;
            long count = 0;
            for (int row = row0; row < first.Length / width; row += period)
            for (int i = row * width + column0; i < (row + 1) * width; i += period)
            {
                a += first[i];
                b += second[i];
                count++;
            }
            Signal = a / count - pedestal;
            Ratio = Signal / (b / count - pedestal);
            offset = pedestal - Ratio * pedestal;
        }

        /// <summary>Mean signal of the first half, ADU.</summary>
        public double Signal { get; }

        /// <summary>c, the ratio of the mean signals.</summary>
        public double Ratio { get; }

        /// <summary>
        /// Clips in three passes: the first still contains all outliers, so the width of the clip has to settle.
        /// </summary>
        public Split Clipped()
        {
            double limit = double.PositiveInfinity;
            Split split = default;
            for (int pass = 0; pass < 4; pass++)
            {
                split = Sum(limit);
                if (split.Cells < 2)
                    return default;
                limit = ClipSigmas * Math.Sqrt(split.Within + split.Between);
            }
            return split;
        }

        private Split Sum(double limit)
        {
            int height = first.Length / width;
            double inCells = 0,
                means = 0,
                squares = 0;
            long pixels = 0,
                cells = 0;
            // cells cut off by the edge are left out
            for (int top = 0; top + CellSide <= height; top += CellSide)
            for (int left = 0; left + CellSide <= width; left += CellSide)
            {
                (double sum, double sumOfSquares, int count) = Cell(top, left, limit);
                if (count < CellSide * CellSide / (2 * period * period))
                    continue;
                double mean = sum / count;
                inCells += sumOfSquares - count * mean * mean;
                means += mean;
                squares += mean * mean;
                pixels += count;
                cells++;
            }
            return cells < 2 || pixels <= cells
                ? default
                : new Split(
                    inCells / (pixels - cells),
                    Math.Max(0, squares - means * means / cells) / (cells - 1),
                    pixels,
                    cells
                );
        }

        private (double Sum, double Squares, int Count) Cell(int top, int left, double limit)
        {
            double sum = 0,
                squares = 0;
            int count = 0;
            for (int row = top + row0; row < top + CellSide; row += period)
            for (int column = left + column0; column < left + CellSide; column += period)
            {
                int i = row * width + column;
                double d = first[i] - Ratio * second[i] - offset;
                if (!(Math.Abs(d) <= limit))
                    continue;
                sum += d;
                squares += d * d;
                count++;
            }
            return (sum, squares, count);
        }
    }
}
