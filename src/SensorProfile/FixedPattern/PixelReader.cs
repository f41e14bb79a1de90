using SensorProfile.Fitting;
using SensorProfile.Pixels;

namespace SensorProfile.FixedPattern;

/// <summary>Turns a pixel's group means and variances into its rate, law and flags.</summary>
internal sealed class PixelReader
{
    private const double NoisyByChance = 1e-6;           // of a sound pixel being taken for noisy: 24 in 24 million
    private const double GroupNoisyByChance = 1e-4;
    private const double SaturatedShare = 0.995;         // of the way from the level to the top code
    private const double OutstandingSigmas = 6;
    private const double CellSigmas = 5;                 // a pixel further from its cell's median is no part of a smooth glow
    private const double CellShare = 0.5;                // … where the cell itself glows steeply, by this share of the glow more

    private readonly PatternInput input;
    private readonly (DarkSeries Series, SeriesLevels Levels)[] temperatures;
    private readonly ReferenceScale scale;
    private readonly double limit;
    private readonly PixelLaw? law;
    private readonly double noisyLimit, flickerRatio;
    private readonly double[][] groupLimits, wobble;

    public PixelReader(PatternInput input, (DarkSeries Series, SeriesLevels Levels)[] temperatures, ReferenceScale scale, double limit, bool laws)
    {
        (this.input, this.temperatures, this.scale, this.limit) = (input, temperatures, scale, limit);
        law = laws ? new PixelLaw([.. temperatures.Select(t => t.Series.TemperatureCelsius)], input.ReferenceTemperature, input.ActivationLaw,
            [.. temperatures.Select(t => t.Series.TypicalRate / t.Levels.Noise)]) : null;
        int freedom = temperatures.Sum(t => t.Levels.Frames.Take(t.Levels.Line.DarkGroups).Sum(n => n - 1));
        noisyLimit = freedom < 1 ? double.PositiveInfinity : Probability.ChiSquaredQuantile(1 - NoisyByChance, freedom) / freedom;
        Freedom = freedom;
        double factor = (input.Thresholds ?? new()).NoiseFactor;
        flickerRatio = factor * factor;
        groupLimits = [.. temperatures.Select(t => t.Levels.Frames.Select(n =>
            n < 2 ? double.PositiveInfinity : Probability.ChiSquaredQuantile(1 - GroupNoisyByChance, n - 1) / (n - 1)).ToArray())];
        wobble = [.. temperatures.Select(t => (double[])[.. t.Series.Exposures.Select(e => e.TemperatureScatter), 0])];
        NoisyGroupsNeeded = Math.Min(2, temperatures.Sum(t => t.Levels.Frames.Take(t.Levels.Line.DarkGroups).Count(n => n > 1)));
    }

    /// <summary>Degrees of freedom of a pixel's scatter.</summary>
    public int Freedom { get; }

    /// <summary>Groups that must scatter too much before a pixel flickers: two, so that one hit by a charged particle is not enough.</summary>
    private int NoisyGroupsNeeded { get; }

    /// <summary>Reads the pixels of one strip.</summary>
    public StripWorker Worker(GroupStrip strip) => new(this, strip);

    /// <summary>Buffers of one strip.</summary>
    internal sealed class StripWorker
    {
        private readonly PixelReader reader;
        private readonly GroupStrip strip;
        private readonly float[][] means, variances;
        private readonly double[] rates, uncertainties;
        private readonly double[][] signals;                // of the pixel just read, e- above the level: [temperature][group]

        private int noisyGroups;

        internal StripWorker(PixelReader reader, GroupStrip strip)
        {
            (this.reader, this.strip) = (reader, strip);
            means = new float[strip.Groups][];
            variances = new float[strip.Groups][];
            for (int g = 0; g < strip.Groups; g++)
            {
                (means[g], variances[g]) = (new float[strip.Pixels], new float[strip.Pixels]);
                strip.Moments(g, means[g], variances[g]);
            }
            rates = new double[reader.temperatures.Length];
            uncertainties = new double[rates.Length];
            signals = [.. reader.temperatures.Select(t => new double[t.Levels.Frames.Length])];
        }

        /// <summary>Reads one pixel.</summary>
        public PixelReading Read(int pixel)
        {
            int row = strip.FirstRow + pixel / strip.Width, column = pixel % strip.Width;
            int channel = reader.input.Mosaic.Channel(row, column), at = row * strip.Width + column;
            double gain = reader.input.Gains[channel], scatter = Signals(pixel, at, channel, gain);
            PixelFlags flags = scatter > reader.noisyLimit ? PixelFlags.Noisy : PixelFlags.None;
            if (flags != 0 && scatter > reader.flickerRatio && noisyGroups >= reader.NoisyGroupsNeeded) flags |= PixelFlags.Flickering;
            double factor = flags != 0 ? scatter : 1;
            for (int t = 0; t < rates.Length; t++) flags |= Line(t, channel, gain, factor);
            return Joined(flags);
        }

        /// <summary>Adds the signals of the strip's pixels to their cells, those left out that are flagged or stand out of their own cell: glow stays in, hot pixels do not.</summary>
        public void AddTo(StripResult result, ReadOnlySpan<float> rate, ReadOnlySpan<PixelFlags> flags)
        {
            int size = result.Grid.Size, width = strip.Width;
            var members = new List<int>(size * strip.Rows);
            var values = new List<double>(size * strip.Rows);
            for (int from = 0; from < width; from += size)
                for (int row = 0; row < strip.Rows;)
                {
                    int cell = result.CellOf(row, from), end = row + 1;
                    while (end < strip.Rows && result.CellOf(end, from) == cell) end++;
                    members.Clear();
                    values.Clear();
                    for (; row < end; row++)
                        for (int column = from; column < Math.Min(width, from + size); column++)
                        {
                            int pixel = row * width + column;
                            if ((flags[pixel] & ~PixelFlags.Outstanding) != PixelFlags.None || float.IsNaN(rate[pixel])) continue;
                            members.Add(pixel);
                            values.Add(rate[pixel]);
                        }
                    AddCell(result, cell, members, values, rate);
                }
        }

        private void AddCell(StripResult result, int cell, List<int> members, List<double> values, ReadOnlySpan<float> rate)
        {
            if (members.Count == 0) return;
            double median = OrderStatistics.Median(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(values));
            double reach = CellSigmas * Math.Max(reader.scale.Spread, reader.scale.Noise) + CellShare * Math.Abs(median - reader.scale.Typical);
            foreach (int pixel in members)
            {
                if (Math.Abs(rate[pixel] - median) > reach) continue;
                int row = strip.FirstRow + pixel / strip.Width, column = pixel % strip.Width, channel = reader.input.Mosaic.Channel(row, column);
                Signals(pixel, row * strip.Width + column, channel, reader.input.Gains[channel]);
                result.Counts[cell]++;
                for (int t = 0; t < signals.Length; t++)
                    for (int g = 0; g < signals[t].Length; g++) result.Sums[t][g][cell] += signals[t][g];
            }
        }

        /// <summary>Signals above the typical pixel's level; returns the pooled scatter over what noise and signal explain, 1 for a sound pixel.</summary>
        private double Signals(int pixel, int at, int channel, double gain)
        {
            double chiSquared = 0;
            noisyGroups = 0;
            for (int t = 0, group = 0; t < signals.Length; t++)
            {
                SeriesLevels levels = reader.temperatures[t].Levels;
                for (int g = 0; g < levels.Line.DarkGroups; g++, group++)
                {
                    signals[t][g] = (means[group][pixel] - levels.Levels[g][channel]) * gain;
                    if (levels.Frames[g] < 2) continue;
                    double ratio = variances[group][pixel] / Variance(levels, t, g, channel, gain);
                    chiSquared += (levels.Frames[g] - 1) * ratio;
                    if (ratio > reader.groupLimits[t][g]) noisyGroups++;
                }
                if (levels.Line.UsesUnlit)
                    signals[t][^1] = (reader.input.Unlit!.Mean[at] - levels.Levels[^1][channel]) * gain;
            }
            return reader.Freedom > 0 ? chiSquared / reader.Freedom : 0;
        }

        /// <summary>Variance of one frame in ADU²: the typical pixel's, the Poisson part of what the pixel has above it, and that part's scatter with the temperature.</summary>
        private double Variance(SeriesLevels levels, int t, int g, int channel, double gain)
        {
            double above = Math.Max(0, signals[t][g]), wobble = above * reader.wobble[t][g];
            return levels.Variances[g][channel] + (above + wobble * wobble) / (gain * gain);
        }

        private PixelFlags Line(int t, int channel, double gain, double noiseFactor)
        {
            SeriesLevels levels = reader.temperatures[t].Levels;
            ExposureLine line = levels.Line;
            double slope = 0, variance = 0;
            bool saturated = false;
            for (int g = 0; g < signals[t].Length; g++)
            {
                slope += line.Factors[g] * signals[t][g];
                variance += line.Factors[g] * line.Factors[g] * Variance(levels, t, g, channel, gain) / levels.Frames[g];
                saturated |= signals[t][g] > SaturatedShare * (reader.input.TopCode - levels.Levels[g][channel]) * gain;
            }
            // Levels were taken from every group's median, the slope of which is the median slope of the sample only nearly: the difference is taken back.
            slope -= gain * levels.Centres[channel] - gain * MedianSlope(levels, channel);
            rates[t] = reader.temperatures[t].Series.TypicalRate + slope;
            uncertainties[t] = Math.Sqrt(variance * noiseFactor) * gain;
            if (saturated)
            {
                Unsaturated(t, channel, gain);
                return PixelFlags.Saturated;
            }
            return LineMisfit.Exceeds(line, levels, signals[t], slope, channel, gain, noiseFactor) ? PixelFlags.NonLinear : PixelFlags.None;
        }

        private static double MedianSlope(SeriesLevels levels, int channel)
        {
            double slope = 0;
            for (int g = 0; g < levels.Levels.Length; g++) slope += levels.Line.Factors[g] * levels.Levels[g][channel];
            return slope;
        }

        /// <summary>A pixel at its top: the line through the groups below it, or not a number when fewer than two are left.</summary>
        private void Unsaturated(int t, int channel, double gain)
        {
            SeriesLevels levels = reader.temperatures[t].Levels;
            List<double> x = [], y = [], u = [];
            for (int g = 0; g < signals[t].Length; g++)
            {
                if (signals[t][g] > 0.9 * (reader.input.TopCode - levels.Levels[g][channel]) * gain) continue;
                x.Add(levels.Line.Seconds[g]);
                y.Add(signals[t][g]);
                u.Add(Math.Sqrt(Variance(levels, t, g, channel, gain) / levels.Frames[g]) * gain);
            }
            bool line = x.Distinct().Count() > 1;
            StraightLine? fit = line ? StraightLine.Fit([.. x], [.. y], [.. u]) : null;
            rates[t] = fit is null ? double.NaN : reader.temperatures[t].Series.TypicalRate + fit.Slope;
            uncertainties[t] = fit?.SlopeUncertainty ?? double.NaN;
        }

        private PixelReading Joined(PixelFlags flags)
        {
            ReferenceScale scale = reader.scale;
            double near = rates[scale.Nearest] * scale.Factors[scale.Nearest], nearUncertainty = uncertainties[scale.Nearest] * scale.Factors[scale.Nearest];
            double joined = scale.Typical, variance = 0;
            for (int t = 0; t < rates.Length; t++)
            {
                double relative = rates[t] - reader.temperatures[t].Series.TypicalRate;
                joined += scale.Weights[t] * scale.Factors[t] * relative;
                variance += Math.Pow(scale.Weights[t] * scale.Factors[t] * uncertainties[t], 2);
            }
            bool outstanding = !(joined - scale.Typical < reader.limit) || near - scale.Typical > Math.Max(reader.limit, OutstandingSigmas * nearUncertainty);
            double doubling = double.NaN, doublingUncertainty = double.NaN;
            if (outstanding) (joined, variance) = (near, nearUncertainty * nearUncertainty);
            if (reader.law?.Fit(outstanding, rates, uncertainties) is { } own)
            {
                (doubling, doublingUncertainty) = (own.Doubling, own.DoublingUncertainty);
                if (outstanding)
                {
                    joined = Math.Exp(own.LogRate);
                    variance = Math.Pow(joined * own.LogRateUncertainty, 2);
                }
            }
            return new((float)joined, (float)Math.Sqrt(variance), (float)doubling, (float)doublingUncertainty, outstanding ? flags | PixelFlags.Outstanding : flags);
        }
    }
}
