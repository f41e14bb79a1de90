using SensorProfile.Frames;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Screening;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Level and variance of each channel without light: the zero point of photon transfer.</summary>
/// <param name="Levels">Mean level of each channel, ADU.</param>
/// <param name="Variances">Temporal variance of each channel, ADU²; null where no pair exists.</param>
internal sealed record DarkLevelWithoutLight(double[] Levels, PooledVariance?[] Variances)
{
    /// <summary>Mean over the channels, ADU.</summary>
    public double Mean => Levels.Average();

    /// <summary>
    /// Taken from the bias frames, or from the shortest darks or dark flats if there are none; null without any of
    /// these.
    /// </summary>
    public static DarkLevelWithoutLight? Estimate(ModeFrames mode, BiasResult bias, StageProgress stages)
    {
        if (bias.Channels.Count > 0)
            return new(
                [.. bias.Channels.Select(c => c.Level.Value)],
                [.. bias.Channels.Select(c => Rounded(Variance(c), mode.CodeStep.Step))]
            );
        ScreenedSet? shortest = mode.SetsOf(FrameKind.DarkFlat)
            .Concat(mode.SetsOf(FrameKind.Dark))
            .OrderBy(s => s.Set.ExposureSeconds ?? double.MaxValue)
            .FirstOrDefault();
        if (shortest is null)
            return null;
        PairStatistics[] pairs = stages.ForEach("Dark flat pairs", shortest.Pairs(), 2, mode.BytesPerFrame, p =>
            PairStatistics.Measure(p.A.Samples, p.B.Samples, mode.Mosaic, options: stages.SingleThread)
        );
        return new(
            LevelsOf(shortest),
            [
                .. mode.Mosaic.Names.Select(
                    (_, c) =>
                        Rounded(
                            PooledVariance.Pool([
                                .. pairs
                                    .Select(p => p.Channels[c].TemporalVariance)
                                    .Select(v => (v.Value, v.StandardUncertainty)),
                            ]),
                            mode.CodeStep.Step
                        )
                ),
            ]
        );
    }

    // Noise that is clipped at its lowest code, or lost in rounding, is larger than its variance shows: half of a
    // normal distribution has 0.34 of the full variance.
    private static PooledVariance? Variance(BiasChannel bias) =>
        bias is { ReadNoiseAdu: null, Variance: { } seen }
            ? seen with
            {
                StandardUncertainty = Math.Max(seen.StandardUncertainty, 2 * seen.Value),
            }
            : bias.Variance;

    // Frames that never change hide their noise between two codes; it can reach about the variance of the rounding.
    private static PooledVariance? Rounded(PooledVariance? seen, int codeStep) =>
        seen is { StandardUncertainty: > 0 } or null
            ? seen
            : seen with
            {
                StandardUncertainty = codeStep * codeStep / 12.0,
            };

    /// <summary>
    /// Level of the dark flats that match the exposure of a flat set, or this level if there are none.
    /// </summary>
    public double[] LevelsFor(ScreenedSet flats, ModeFrames mode)
    {
        ScreenedSet? match = mode.SetsOf(FrameKind.DarkFlat)
            .FirstOrDefault(s => Same(s.Set.ExposureSeconds, flats.Set.ExposureSeconds));
        return match is null ? Levels : LevelsOf(match);
    }

    private static double[] LevelsOf(ScreenedSet set) =>
        [.. Enumerable.Range(0, set.Frames[0].Channels.Count).Select(c => set.Frames.Average(f => f.Channels[c].Mean))];

    private static bool Same(double? a, double? b) =>
        a is { } x && b is { } y && Math.Abs(x - y) <= 0.02 * Math.Max(x, y);
}
