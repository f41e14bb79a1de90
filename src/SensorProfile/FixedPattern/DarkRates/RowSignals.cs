using System.Numerics;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Signals, scatter, slope and variance of the slope at every temperature, for all pixels of one row at once.
/// </summary>
/// <remarks>
/// signal s = (mean − level)·gain, e- above the typical pixel; variance of one frame V = typical variance + (s⁺ +
/// (wobble·s⁺)²)/gain², ADU²: Poisson noise of the signal above the typical pixel, and the scatter of that signal with
/// temperature; scatter = Σ(n − 1)·(variance/V) over the degrees of freedom; slope = Σ factor·s; variance of the slope
/// = Σ factor²·V/n. A lane holds one pixel. Values for even and odd columns (the colours of a mosaic) alternate in a
/// vector, because every row starts at an even column. Buffers are padded to whole vectors.
/// </remarks>
internal sealed class RowSignals
{
    private readonly PatternInput input;
    private readonly IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures;
    private readonly double[][] groupLimits,
        wobble;
    private readonly int freedom;
    private readonly float[] unlit;

    /// <summary>Makes the buffers of one worker.</summary>
    /// <param name="input">The camera mode.</param> <param name="temperatures">Levels of every temperature.</param>
    /// <param name="groupLimits">Scatter of a group beyond which it counts as noisy: [temperature][group].</param>
    /// <param name="wobble">Relative scatter of the dark signal with the temperature: [temperature][group].</param>
    /// <param name="freedom">Degrees of freedom of the scatter of a pixel.</param>
    public RowSignals(
        PatternInput input,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures,
        double[][] groupLimits,
        double[][] wobble,
        int freedom
    )
    {
        (this.input, this.temperatures, this.groupLimits, this.wobble, this.freedom) = (
            input,
            temperatures,
            groupLimits,
            wobble,
            freedom
        );
        int padded = Padded(input.Width);
        Signals = [.. temperatures.Select(t => t.Levels.Frames.Select(_ => new double[padded]).ToArray())];
        (Slopes, Variances, AtTop) = (
            [.. temperatures.Select(_ => new double[padded])],
            [.. temperatures.Select(_ => new double[padded])],
            [.. temperatures.Select(_ => new double[padded])]
        );
        (Scatter, NoisyGroups) = (new double[padded], new double[padded]);
        unlit = new float[padded];
    }

    /// <summary>Signal above the typical pixel, e-: [temperature][group][column].</summary>
    public double[][][] Signals { get; }

    /// <summary>Slope relative to the level of the typical pixel, e-/s: [temperature][column].</summary>
    public double[][] Slopes { get; }

    /// <summary>Variance of the slope, ADU²/s²: [temperature][column].</summary>
    public double[][] Variances { get; }

    /// <summary>1 if a group is at the top code, else 0: [temperature][column].</summary>
    public double[][] AtTop { get; }

    /// <summary>
    /// Pooled scatter over the scatter that noise and signal explain, 1 for a sound pixel; 0 if no group has two
    /// frames.
    /// </summary>
    public double[] Scatter { get; }

    /// <summary>Number of groups that scatter beyond their limit.</summary>
    public double[] NoisyGroups { get; }

    /// <summary>Length to which a buffer of this many values is padded.</summary>
    public static int Padded(int length) =>
        (length + Vector<float>.Count - 1) / Vector<float>.Count * Vector<float>.Count;

    /// <summary>Reads a row.</summary>
    /// <param name="row">0-based row of the frame.</param>
    /// <param name="means">Mean of every group, ADU; readable for <see cref="Padded"/> values from
    /// <paramref name="offset"/> on.</param>
    /// <param name="variances">Temporal variance, ADU²; the same length.</param>
    /// <param name="offset">Index at which the row starts.</param>
    public void Read(int row, float[][] means, float[][] variances, int offset)
    {
        Array.Clear(Scatter);
        Array.Clear(NoisyGroups);
        for (int t = 0, group = 0; t < Signals.Length; t++)
        {
            Array.Clear(Slopes[t]);
            Array.Clear(Variances[t]);
            Array.Clear(AtTop[t]);
            SeriesLevels levels = temperatures[t].Levels;
            for (int g = 0; g < levels.Slope.DarkGroups; g++, group++)
                Add(
                    t,
                    g,
                    row,
                    means[group].AsSpan(offset),
                    levels.Frames[g] < 2 ? [] : variances[group].AsSpan(offset)
                );
            if (!levels.Slope.UsesUnlit)
                continue;
            input.Unlit!.Mean.AsSpan(row * input.Width, input.Width).CopyTo(unlit);
            Add(t, levels.Slope.DarkGroups, row, unlit, []);
        }
        for (int i = 0; i < Scatter.Length; i++)
            Scatter[i] = freedom > 0 ? Scatter[i] / freedom : 0;
    }

    private void Add(int t, int g, int row, ReadOnlySpan<float> means, ReadOnlySpan<float> variances)
    {
        SeriesLevels levels = temperatures[t].Levels;
        Vector<double> Alternating(Func<int, double> ofChannel) =>
            RowSignals.Alternating(ofChannel(input.Mosaic.Channel(row, 0)), ofChannel(input.Mosaic.Channel(row, 1)));
        var group = new Group(
            Level: Alternating(c => levels.Levels[g][c]),
            Gain: Alternating(c => input.Gains[c]),
            GainSquared: Alternating(c => input.Gains[c] * input.Gains[c]),
            Typical: Alternating(c => levels.Variances[g][c]),
            Top: Alternating(c => PixelReader.SaturatedShare * (input.TopCode - levels.Levels[g][c]) * input.Gains[c]),
            Wobble: new(wobble[t][g]),
            Factor: new(levels.Slope.Factors[g]),
            Frames: new(levels.Frames[g]),
            Freedom: new(levels.Frames[g] - 1),
            Limit: new(g < groupLimits[t].Length ? groupLimits[t][g] : 0)
        );
        int step = Vector<double>.Count;
        for (int i = 0; i < Scatter.Length; i += 2 * step)
        {
            Vector.Widen(new Vector<float>(means[i..]), out var low, out var high);
            Vector<double> lowVariance = default,
                highVariance = default;
            if (!variances.IsEmpty)
                Vector.Widen(new Vector<float>(variances[i..]), out lowVariance, out highVariance);
            AddLanes(t, g, i, low, lowVariance, !variances.IsEmpty, group);
            AddLanes(t, g, i + step, high, highVariance, !variances.IsEmpty, group);
        }
    }

    private void AddLanes(
        int t,
        int g,
        int at,
        Vector<double> mean,
        Vector<double> variance,
        bool scatters,
        in Group group
    )
    {
        var signal = (mean - group.Level) * group.Gain;
        signal.CopyTo(Signals[t][g], at);
        var above = Vector.Max(Vector<double>.Zero, signal);
        var wobbling = above * group.Wobble;
        var expected = group.Typical + (above + wobbling * wobbling) / group.GainSquared;
        if (scatters)
        {
            var ratio = variance / expected;
            (new Vector<double>(Scatter, at) + group.Freedom * ratio).CopyTo(Scatter, at);
            (new Vector<double>(NoisyGroups, at) + One(Vector.GreaterThan(ratio, group.Limit))).CopyTo(NoisyGroups, at);
        }
        (new Vector<double>(Slopes[t], at) + group.Factor * signal).CopyTo(Slopes[t], at);
        (new Vector<double>(Variances[t], at) + group.Factor * group.Factor * expected / group.Frames).CopyTo(
            Variances[t],
            at
        );
        Vector.Max(new Vector<double>(AtTop[t], at), One(Vector.GreaterThan(signal, group.Top))).CopyTo(AtTop[t], at);
    }

    private static Vector<double> One(Vector<long> where) =>
        Vector.ConditionalSelect(where, Vector<double>.One, Vector<double>.Zero);

    private static Vector<double> Alternating(double even, double odd)
    {
        Span<double> lanes = stackalloc double[Vector<double>.Count];
        for (int i = 0; i < lanes.Length; i++)
            lanes[i] = i % 2 == 0 ? even : odd;
        return new(lanes);
    }

    /// <summary>Values common to all pixels of a row in one group of frames.</summary>
    private readonly record struct Group(
        Vector<double> Level,
        Vector<double> Gain,
        Vector<double> GainSquared,
        Vector<double> Typical,
        Vector<double> Top,
        Vector<double> Wobble,
        Vector<double> Factor,
        Vector<double> Frames,
        Vector<double> Freedom,
        Vector<double> Limit
    );
}
