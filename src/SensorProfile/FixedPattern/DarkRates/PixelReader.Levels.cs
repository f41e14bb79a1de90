using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Provides the samples of a pixel for the level test.</summary>
internal sealed partial class PixelReader
{
    internal sealed partial class StripWorker
    {
        private ushort[] ofPixel = [];
        private SampleGroup[]? sampled; // sample buffers, shared by all pixels

        /// <summary>
        /// Whether the pixel just read scatters enough to be worth the level test: in all its darks, in one set of them
        /// or in one set of bias frames.
        /// </summary>
        public bool IsSuspect(int rowOfStrip, int column)
        {
            bool suspect = row.Scatter[column] > reader.suspects.PooledLimit || row.NoisyGroups[column] > 0;
            int darks = strip.Groups - reader.suspects.UnlitLimits.Length;
            for (int u = darks; !suspect && u < strip.Groups; u++)
                suspect = variances[u][rowOfStrip * strip.Width + column] > reader.suspects.UnlitLimits[u - darks];
            return suspect;
        }

        /// <summary>
        /// Whether the pixel just read scatters enough for a measurement of its noise, which is quick.
        /// </summary>
        public bool IsNoisy(int rowOfStrip, int column)
        {
            bool noisy = row.Scatter[column] > reader.suspects.LooseLimit;
            int darks = strip.Groups - reader.suspects.LooseUnlitLimits.Length;
            for (int u = darks; !noisy && u < strip.Groups; u++)
                noisy = variances[u][rowOfStrip * strip.Width + column] > reader.suspects.LooseUnlitLimits[u - darks];
            return noisy;
        }

        /// <summary>
        /// The samples of the pixel just read, minus the level of each frame, e-; valid until the next call.
        /// </summary>
        public SampleGroup[] Samples(int rowOfStrip, int column)
        {
            int pixel = rowOfStrip * strip.Width + column,
                channel = reader.input.Mosaic.Channel(strip.FirstRow + rowOfStrip, column);
            double gain = reader.gains[channel];
            SampleGroup[] groups = sampled ??= Buffers();
            int group = 0;
            for (int t = 0; t < signals.Length; t++)
            {
                (DarkSeries series, SeriesLevels levels) = reader.temperatures[t];
                for (int g = 0; g < levels.Slope.DarkGroups; g++, group++)
                {
                    Span<ushort> samples = Copied(group, pixel);
                    double variance = BaseVariance(levels, t, g, channel, gain, Lowest(samples));
                    groups[group] = Filled(groups[group], samples, series.Exposures[g], channel, gain, variance);
                }
            }
            for (int u = 0; group < groups.Length; u++, group++)
                groups[group] = Filled(
                    groups[group],
                    Copied(group, pixel),
                    reader.input.UnlitSets[u],
                    channel,
                    gain,
                    reader.input.UnlitVariance
                );
            return groups;
        }

        /// <summary>Variance and times of all sets for an ordinary pixel of the first channel.</summary>
        public SampleGroup[] OrdinarySets()
        {
            SampleGroup[] sets = Buffers();
            double square = reader.gains[0] * reader.gains[0];
            int group = 0;
            foreach ((_, SeriesLevels levels) in reader.temperatures)
                for (int g = 0; g < levels.Slope.DarkGroups; g++, group++)
                    sets[group] = sets[group] with { Variance = levels.Variances[g][0] * square };
            for (; group < sets.Length; group++)
                sets[group] = sets[group] with { Variance = reader.input.UnlitVariance * square };
            return sets;
        }

        private Span<ushort> Copied(int group, int pixel)
        {
            int frames = strip.Frames(group);
            if (ofPixel.Length < frames)
                ofPixel = new ushort[frames];
            Span<ushort> samples = ofPixel.AsSpan(0, frames);
            strip.CopyPixel(group, pixel, samples);
            return samples;
        }

        private static SampleGroup Filled(
            SampleGroup buffer,
            ReadOnlySpan<ushort> samples,
            DarkExposure set,
            int channel,
            double gain,
            double variance
        )
        {
            double[] values = buffer.Values;
            for (int k = 0; k < values.Length; k++)
                values[k] = gain * (samples[k] - (set.FrameLevels.Count > k ? set.FrameLevels[k][channel] : 0));
            return buffer with { Variance = variance * gain * gain };
        }

        private SampleGroup[] Buffers()
        {
            SampleGroup Buffer(DarkExposure set, double thermal) =>
                new(
                    new double[set.Frames.Count],
                    0,
                    thermal,
                    [.. set.Frames.Select((_, k) => set.StartSeconds.Count > k ? set.StartSeconds[k] : double.NaN)]
                );
            return
            [
                .. reader.temperatures.SelectMany(
                    (temperature, t) =>
                        temperature.Series.Exposures.Select(set => Buffer(set, set.Seconds / reader.scale.Factors[t]))
                ),
                .. reader.input.UnlitSets.Select(set => Buffer(set, 0)),
            ];
        }

        private static int Lowest(ReadOnlySpan<ushort> samples)
        {
            int lowest = samples[0];
            foreach (ushort sample in samples)
                lowest = Math.Min(lowest, sample);
            return lowest;
        }

        /// <summary>
        /// Expected variance for the lowest sample, ADU²: what a flickering pixel adds in its upper level is not dark
        /// signal that could explain its scatter.
        /// </summary>
        private double BaseVariance(SeriesLevels levels, int t, int g, int channel, double gain, int lowest)
        {
            double above = Math.Max(0, (lowest - levels.Levels[g][channel]) * gain),
                wobble = above * reader.wobble[t][g];
            return levels.Variances[g][channel] + (above + wobble * wobble) / (gain * gain);
        }
    }
}
