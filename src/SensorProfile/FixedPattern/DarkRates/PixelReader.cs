using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Turns the group means and variances of a pixel into its rate, law and flags.</summary>
internal sealed partial class PixelReader
{
    /// <summary>A signal beyond this share of the range from the level to the top code is saturated.</summary>
    public const double SaturatedShare = 0.995;

    private const double NoisyByChance = 1e-6; // probability that a sound pixel is taken for noisy: 24 in 24 million
    private const double GroupNoisyByChance = 1e-4;
    private const double OutstandingSigmas = 6;

    private readonly PatternInput input;
    private readonly (DarkSeries Series, SeriesLevels Levels)[] temperatures;
    private readonly ReferenceScale scale;
    private readonly double limit;
    private readonly PixelLaw? law;
    private readonly double noisyLimit,
        flickerRatio;

    // the latter of the pixels at the median of every temperature's slopes
    private readonly double[] gains,
        medianRates;
    private readonly double[][] groupLimits,
        wobble,
        slopeOffsets;
    private readonly TelegraphSuspects suspects;

    /// <summary>Precomputes scales, limits and laws from the sampled levels.</summary>
    public PixelReader(
        PatternInput input,
        (DarkSeries Series, SeriesLevels Levels)[] temperatures,
        ReferenceScale scale,
        double limit,
        LawBend? bend
    )
    {
        (this.input, this.temperatures, this.scale, this.limit, gains) = (
            input,
            temperatures,
            scale,
            limit,
            [.. input.Gains]
        );
        law = bend is { } known
            ? new PixelLaw(
                [.. temperatures.Select(t => t.Series.TemperatureCelsius)],
                input.ReferenceTemperature,
                input.ActivationLaw,
                [.. temperatures.Select(t => t.Series.TypicalRate / t.Levels.Noise)],
                known,
                input.MinLawTemperatures
            )
            : null;
        int freedom = temperatures.Sum(t => t.Levels.Frames.Take(t.Levels.Slope.DarkGroups).Sum(n => n - 1));
        noisyLimit =
            freedom < 1
                ? double.PositiveInfinity
                : Probability.ChiSquaredQuantile(1 - NoisyByChance, freedom) / freedom;
        Freedom = freedom;
        medianRates = [.. temperatures.Select(t => t.Series.TypicalRate + t.Levels.MedianShift)];
        double factor = (input.Thresholds ?? new()).NoiseFactor;
        flickerRatio = factor * factor;
        groupLimits =
        [
            .. temperatures.Select(t =>
                t.Levels.Frames.Select(n =>
                        n < 2
                            ? double.PositiveInfinity
                            : Probability.ChiSquaredQuantile(1 - GroupNoisyByChance, n - 1) / (n - 1)
                    )
                    .ToArray()
            ),
        ];
        wobble = [.. temperatures.Select(t => (double[])[.. t.Series.Exposures.Select(e => e.TemperatureScatter), 0])];
        slopeOffsets =
        [
            .. temperatures.Select(t =>
                t.Levels.Centres.Select(
                        (centre, c) => input.Gains[c] * centre - input.Gains[c] * MedianSlope(t.Levels, c)
                    )
                    .ToArray()
            ),
        ];
        suspects = new(input, freedom);
        NoisyGroupsNeeded = Math.Min(
            2,
            temperatures.Sum(t => t.Levels.Frames.Take(t.Levels.Slope.DarkGroups).Count(n => n > 1))
        );
    }

    /// <summary>Degrees of freedom of the scatter of a pixel.</summary>
    public int Freedom { get; }

    /// <summary>
    /// Groups that must scatter too much before a pixel counts as flickering: two, so that one charged-particle hit is
    /// not enough.
    /// </summary>
    private int NoisyGroupsNeeded { get; }

    /// <summary>Makes the buffers of one worker.</summary>
    public StripWorker Worker() => new(this);

    // Levels are the medians of the groups, and their slope is only approximately the median slope of the sample; this
    // is the difference to correct.
    private static double MedianSlope(SeriesLevels levels, int channel)
    {
        double slope = 0;
        for (int g = 0; g < levels.Levels.Length; g++)
            slope += levels.Slope.Factors[g] * levels.Levels[g][channel];
        return slope;
    }

    /// <summary>Reads strip after strip.</summary>
    internal sealed partial class StripWorker
    {
        private readonly PixelReader reader;
        private readonly RowSignals row;
        private readonly double[] rates,
            uncertainties;

        // signals of the pixel just read, e- above the level: [temperature][group]
        private readonly double[][] signals;
        private float[][] means = [],
            variances = [];
        private GroupStrip strip = null!;

        internal StripWorker(PixelReader reader)
        {
            this.reader = reader;
            row = new(reader.input, reader.temperatures, reader.groupLimits, reader.wobble, reader.Freedom);
            rates = new double[reader.temperatures.Length];
            uncertainties = new double[rates.Length];
            signals = [.. reader.temperatures.Select(t => new double[t.Levels.Frames.Length])];
        }

        /// <summary>Loads the means and variances of a strip.</summary>
        public void Begin(GroupStrip next)
        {
            strip = next;
            int length = RowSignals.Padded(strip.Width) + strip.Pixels;
            if (means.Length != strip.Groups || means[0].Length < length)
            {
                means = [.. Enumerable.Range(0, strip.Groups).Select(_ => new float[length])];
                variances = [.. Enumerable.Range(0, strip.Groups).Select(_ => new float[length])];
            }
            for (int g = 0; g < strip.Groups; g++)
                strip.Moments(g, means[g].AsSpan(0, strip.Pixels), variances[g].AsSpan(0, strip.Pixels));
        }

        /// <summary>Loads a row of the strip, counted from its first.</summary>
        public void BeginRow(int rowOfStrip) =>
            row.Read(strip.FirstRow + rowOfStrip, means, variances, rowOfStrip * strip.Width);

        /// <summary>Reads one pixel of the row.</summary>
        /// <param name="rowOfStrip">Row, counted from the first of the strip.</param>
        /// <param name="column">Column.</param>
        /// <param name="withLaw">Whether to fit a law for an ordinary pixel; pixels that stand out always get
        /// one.</param>
        public PixelReading Read(int rowOfStrip, int column, bool withLaw = true)
        {
            int channel = reader.input.Mosaic.Channel(strip.FirstRow + rowOfStrip, column);
            double gain = reader.gains[channel],
                scatter = row.Scatter[column];
            PixelFlags flags = scatter > reader.noisyLimit ? PixelFlags.Noisy : PixelFlags.None;
            if (flags != 0 && scatter > reader.flickerRatio && row.NoisyGroups[column] >= reader.NoisyGroupsNeeded)
                flags |= PixelFlags.Flickering;
            double factor = flags != 0 ? scatter : 1;
            for (int t = 0; t < rates.Length; t++)
                flags |= Slope(t, rowOfStrip, column, channel, gain, factor);
            return Joined(flags, withLaw);
        }

        private PixelFlags Slope(int t, int rowOfStrip, int column, int channel, double gain, double noiseFactor)
        {
            double slope = row.Slopes[t][column] - reader.slopeOffsets[t][channel];
            rates[t] = reader.medianRates[t] + slope;
            uncertainties[t] = Math.Sqrt(row.Variances[t][column] * noiseFactor) * gain;
            bool saturated = row.AtTop[t][column] > 0;
            SeriesLevels levels = reader.temperatures[t].Levels;
            double[] signal = signals[t];
            for (int g = 0; g < signal.Length; g++)
                signal[g] = row.Signals[t][g][column];
            if (saturated)
            {
                Unsaturated(t, channel, gain);
                return PixelFlags.Saturated;
            }
            bool bent =
                SlopeMisfit.Exceeds(levels.Slope, levels, signal, slope, channel, gain, noiseFactor)
                && (
                    row.NoisyGroups[column] == 0
                    || SlopeMisfit.ExceedsScatter(
                        levels.Slope,
                        levels,
                        signal,
                        slope,
                        channel,
                        gain,
                        Scatter(t, rowOfStrip, column, gain)
                    )
                );
            return bent ? PixelFlags.NonLinear : PixelFlags.None;
        }

        /// <summary>Variance of a pixel in each group of a temperature, e-²; 0 for the unlit frames.</summary>
        private double[] Scatter(int t, int rowOfStrip, int column, double gain)
        {
            int first = reader.temperatures.Take(t).Sum(before => before.Levels.Slope.DarkGroups),
                dark = reader.temperatures[t].Levels.Slope.DarkGroups;
            return
            [
                .. signals[t]
                    .Select(
                        (_, g) => g < dark ? variances[first + g][rowOfStrip * strip.Width + column] * gain * gain : 0
                    ),
            ];
        }

        /// <summary>
        /// For a saturated pixel: the line through the groups below saturation, or not a number when fewer than two are
        /// left.
        /// </summary>
        private void Unsaturated(int t, int channel, double gain)
        {
            SeriesLevels levels = reader.temperatures[t].Levels;
            List<double> x = [],
                y = [],
                u = [];
            for (int g = 0; g < signals[t].Length; g++)
            {
                if (signals[t][g] > 0.9 * (reader.input.TopCode - levels.Levels[g][channel]) * gain)
                    continue;
                x.Add(levels.Slope.Seconds[g]);
                y.Add(signals[t][g]);
                u.Add(Math.Sqrt(Variance(levels, t, g, channel, gain) / levels.Frames[g]) * gain);
            }
            bool line = x.Distinct().Count() > 1;
            StraightLine? fit = line ? StraightLine.Fit([.. x], [.. y], [.. u]) : null;
            rates[t] = fit is null ? double.NaN : reader.medianRates[t] + fit.Slope;
            uncertainties[t] = fit?.SlopeUncertainty ?? double.NaN;
        }

        /// <summary>Variance of one frame, ADU², as in <see cref="RowSignals"/>.</summary>
        private double Variance(SeriesLevels levels, int t, int g, int channel, double gain)
        {
            double above = Math.Max(0, signals[t][g]),
                wobble = above * reader.wobble[t][g];
            return levels.Variances[g][channel] + (above + wobble * wobble) / (gain * gain);
        }

        private PixelReading Joined(PixelFlags flags, bool withLaw)
        {
            ReferenceScale scale = reader.scale;
            double near = rates[scale.Nearest] * scale.Factors[scale.Nearest],
                nearUncertainty = uncertainties[scale.Nearest] * scale.Factors[scale.Nearest];
            double joined = scale.Typical,
                variance = 0;
            for (int t = 0; t < rates.Length; t++)
            {
                double relative = rates[t] - reader.medianRates[t],
                    own = scale.Weights[t] * scale.Factors[t] * uncertainties[t];
                joined += scale.Weights[t] * scale.Factors[t] * relative;
                variance += own * own;
            }
            bool outstanding =
                !(joined - scale.Typical < reader.limit)
                || near - scale.Typical > Math.Max(reader.limit, OutstandingSigmas * nearUncertainty);
            double doubling = double.NaN,
                doublingUncertainty = double.NaN,
                correlation = double.NaN;
            if (outstanding)
                (joined, variance) = (near, nearUncertainty * nearUncertainty);
            if ((outstanding || withLaw) && reader.law?.Fit(outstanding, rates, uncertainties) is { } law)
            {
                (doubling, doublingUncertainty, correlation) = (law.Doubling, law.DoublingUncertainty, law.Correlation);
                if (outstanding)
                {
                    joined = Math.Exp(law.LogRate);
                    variance = Math.Pow(joined * law.LogRateUncertainty, 2);
                }
            }
            return new(
                (float)joined,
                (float)Math.Sqrt(variance),
                (float)doubling,
                (float)doublingUncertainty,
                outstanding ? flags | PixelFlags.Outstanding : flags
            )
            {
                Correlation = (float)correlation,
            };
        }
    }
}
