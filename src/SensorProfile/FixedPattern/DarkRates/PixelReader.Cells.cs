using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Sums the signals of ordinary pixels in coarse cells, for the glow search.</summary>
internal sealed partial class PixelReader
{
    // a pixel further from the median of its cell is not part of a smooth glow
    private const double CellSigmas = 5;

    // … plus this share of the glow, where the cell itself glows steeply
    private const double CellShare = 0.5;

    internal sealed partial class StripWorker
    {
        private byte[] channels = []; // of the pixels of a cell

        /// <summary>
        /// Adds the signals of the pixels of the strip to their cells, except pixels that are flagged or stand out from
        /// their own cell: glow stays in, hot pixels do not.
        /// </summary>
        public void AddTo(StripResult result, ReadOnlySpan<float> rate, ReadOnlySpan<PixelFlags> flags)
        {
            int size = result.Grid.Size,
                width = strip.Width;
            var members = new List<int>(size * strip.Rows);
            var values = new List<double>(size * strip.Rows);
            for (int from = 0; from < width; from += size)
            for (int row = 0; row < strip.Rows; )
            {
                int cell = result.CellOf(row, from),
                    end = row + 1;
                while (end < strip.Rows && result.CellOf(end, from) == cell)
                    end++;
                members.Clear();
                values.Clear();
                for (; row < end; row++)
                for (int column = from; column < Math.Min(width, from + size); column++)
                {
                    int pixel = row * width + column;
                    if ((flags[pixel] & ~PixelFlags.Outstanding) != PixelFlags.None || float.IsNaN(rate[pixel]))
                        continue;
                    members.Add(pixel);
                    values.Add(rate[pixel]);
                }
                AddCell(result, cell, members, values, rate);
            }
        }

        private void AddCell(
            StripResult result,
            int cell,
            List<int> members,
            List<double> values,
            ReadOnlySpan<float> rate
        )
        {
            if (members.Count == 0)
                return;
            double median = OrderStatistics.Median(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(values));
            double reach =
                CellSigmas * Math.Max(reader.scale.Spread, reader.scale.Noise)
                + CellShare * Math.Abs(median - reader.scale.Typical);
            Span<int> smooth = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(members);
            int kept = 0;
            foreach (int pixel in smooth)
                if (Math.Abs(rate[pixel] - median) <= reach)
                    smooth[kept++] = pixel;
            smooth = smooth[..kept];
            result.Counts[cell] += kept;
            if (channels.Length < members.Count)
                channels = new byte[members.Count];
            for (int k = 0; k < kept; k++)
                channels[k] = (byte)
                    reader.input.Mosaic.Channel(strip.FirstRow + smooth[k] / strip.Width, smooth[k] % strip.Width);
            for (int t = 0, group = 0; t < signals.Length; t++)
            {
                SeriesLevels levels = reader.temperatures[t].Levels;
                for (int g = 0; g < levels.Slope.DarkGroups; g++, group++)
                    result.Sums[t][g][cell] += Sum(smooth, means[group], levels.Levels[g]);
                if (levels.Slope.UsesUnlit)
                    result.Sums[t][levels.Slope.DarkGroups][cell] += Sum(
                        smooth,
                        reader.input.Unlit!.Mean.AsSpan(strip.FirstRow * strip.Width),
                        levels.Levels[^1]
                    );
            }
        }

        /// <summary>Σ signal of pixels of the strip whose channels are known, e-.</summary>
        private double Sum(ReadOnlySpan<int> pixels, ReadOnlySpan<float> mean, double[] levels)
        {
            double sum = 0;
            double[] gains = reader.gains;
            for (int k = 0; k < pixels.Length; k++)
                sum += (mean[pixels[k]] - levels[channels[k]]) * gains[channels[k]];
            return sum;
        }
    }
}
