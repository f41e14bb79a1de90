using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Levels, noise and slopes of the typical pixel from evenly spread rows, before the frames are walked in full.
/// </summary>
internal static class LevelSampling
{
    private const int SampledPixels = 400_000; // the median of this many is good to 0.002 of their spread

    /// <summary>Measures one temperature; null when its exposures do not allow a line.</summary>
    public static SeriesLevels? Sample(PatternInput input, DarkSeries series)
    {
        if (ExposureSlope.Prepare(series.Exposures, input.Unlit?.Frames ?? 0) is not { } line)
            return null;
        int pairs = SampledRows.PairsFor(input.Width, input.Height, SampledPixels);
        var groups = series
            .Exposures.Select(e => (IReadOnlyList<IFrameSamples>)[.. e.Frames.Select(f => new SampledRows(f, pairs))])
            .ToArray();
        int count = 2 * pairs * input.Width;
        List<float[]> means = [.. groups.Select(_ => new float[count])],
            variances = [.. groups.Select(_ => new float[count])];
        GroupMoments.Walk(
            groups,
            strip =>
            {
                for (int g = 0; g < groups.Length; g++)
                    strip.CopyTo(g, means[g], variances[g]);
            },
            input.Walk
        );
        if (line.UsesUnlit)
        {
            means.Add(Sampled(input.Unlit!.Mean, input, pairs));
            // a single bias frame has no variance
            variances.Add(input.Unlit.Variance.Length == 0 ? [] : Sampled(input.Unlit.Variance, input, pairs));
        }
        int[] frames = [.. groups.Select(g => g.Count), .. line.UsesUnlit ? [input.Unlit!.Frames] : Array.Empty<int>()];
        return Measure(input, series, line, means, variances, frames) with
        {
            CoreVariance = DarkRateSpread.Measure(input, series, groups),
        };
    }

    private static SeriesLevels Measure(
        PatternInput input,
        DarkSeries series,
        ExposureSlope line,
        List<float[]> means,
        List<float[]> variances,
        int[] frames
    )
    {
        int channels = input.Mosaic.Channels;
        double[][] levels = new double[frames.Length][],
            noise = new double[frames.Length][];
        for (int g = 0; g < frames.Length; g++)
        {
            int group = g;
            levels[g] = ByChannel(input, c => OrderStatistics.MedianInPlace(Sample(means[group], input, c)));
            noise[g] = ByChannel(input, c =>
                TypicalVariance(
                    input,
                    series,
                    line.Seconds[group],
                    frames[group],
                    Sample(variances[group], input, c),
                    input.Gains[c]
                )
            );
        }
        double[] centres = new double[channels],
            spreads = new double[channels],
            uncertainties = new double[channels];
        float[] slopes = Slopes(line, means);
        for (int c = 0; c < channels; c++)
        {
            double[] own = Sample(slopes, input, c);
            centres[c] = OrderStatistics.Median(own);
            spreads[c] = OrderStatistics.MadSigma(own) * input.Gains[c];
            double sum = 0;
            for (int g = 0; g < frames.Length; g++)
                sum += line.Factors[g] * line.Factors[g] * noise[g][c] / frames[g];
            uncertainties[c] = Math.Sqrt(sum) * input.Gains[c];
        }
        return new SeriesLevels
        {
            Slope = line,
            Levels = levels,
            Variances = noise,
            Frames = frames,
            Centres = centres,
            Noise = uncertainties.Average(),
            Spread = spreads.Average(),
            SampledSlopes = slopes,
            MedianShift = MedianShift(input, series, line, frames),
        };
    }

    /// <summary>
    /// Shift of the median slope. A slope Σ factor·mean over n frames of t s has the variance of a single frame of
    /// 1/Σ(factor²·t/n) s with Σ(factor²/n) times the variance without signal, both in units of that exposure.
    /// </summary>
    private static double MedianShift(PatternInput input, DarkSeries series, ExposureSlope line, int[] frames)
    {
        if (series.MedianShift is not { } shift)
            return 0;
        double ofSignal = 0,
            ofNoise = 0;
        for (int g = 0; g < frames.Length; g++)
        {
            double square = line.Factors[g] * line.Factors[g] / frames[g];
            (ofSignal, ofNoise) = (ofSignal + square * line.Seconds[g], ofNoise + square);
        }
        double seconds = 1 / ofSignal;
        return Enumerable
            .Range(0, input.Mosaic.Channels)
            .Average(c =>
                shift(c, seconds, ofNoise * seconds * seconds * input.UnlitVariance * input.Gains[c] * input.Gains[c])
            );
    }

    /// <summary>
    /// Median of the pixel variances over that of χ² with n − 1 degrees of freedom; for a single frame, the variance
    /// expected from read noise and dark signal.
    /// </summary>
    private static double TypicalVariance(
        PatternInput input,
        DarkSeries series,
        double seconds,
        int frames,
        double[] variances,
        double gain
    )
    {
        double floor = input.CodeStep * input.CodeStep / 12.0;
        if (frames < 2 || variances.Length == 0)
            return Math.Max(floor, input.UnlitVariance + series.TypicalRate * seconds / gain / gain);
        return Math.Max(
            floor,
            OrderStatistics.MedianInPlace(variances) * (frames - 1) / Probability.ChiSquaredQuantile(0.5, frames - 1)
        );
    }

    internal static float[] Slopes(ExposureSlope line, List<float[]> means)
    {
        float[] slopes = new float[means[0].Length];
        for (int i = 0; i < slopes.Length; i++)
        {
            double slope = 0;
            for (int g = 0; g < means.Count; g++)
                slope += line.Factors[g] * means[g][i];
            slopes[i] = (float)slope;
        }
        return slopes;
    }

    private static float[] Sampled(float[] map, PatternInput input, int pairs)
    {
        float[] sampled = new float[2 * pairs * input.Width];
        for (int row = 0; row < 2 * pairs; row++)
            map.AsSpan(SampledRows.RowOf(row, pairs, input.Height) * input.Width, input.Width)
                .CopyTo(sampled.AsSpan(row * input.Width));
        return sampled;
    }

    /// <summary>The values of one channel of a map whose first row is even.</summary>
    internal static double[] Sample(float[] map, PatternInput input, int channel)
    {
        int period = input.Mosaic.Period,
            width = input.Width;
        int height = map.Length / width,
            first = channel / period,
            left = channel % period;
        double[] values = GC.AllocateUninitializedArray<double>(
            ((height - first + period - 1) / period) * ((width - left + period - 1) / period)
        );
        int next = 0;
        for (int row = first; row < height; row += period)
        {
            ReadOnlySpan<float> line = map.AsSpan(row * width, width);
            for (int column = left; column < line.Length; column += period)
                values[next++] = line[column];
        }
        return values;
    }

    private static double[] ByChannel(PatternInput input, Func<int, double> measure) =>
        [.. Enumerable.Range(0, input.Mosaic.Channels).Select(measure)];
}
