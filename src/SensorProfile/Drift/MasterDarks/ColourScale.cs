using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Pixels;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>
/// Brings the colours of a camera that scales them differently to one scale, so that one gain and one noise hold for
/// all.
/// </summary>
/// <remarks>
/// v′ = M + (v − m_c)·g_c/g: m_c is the median of colour c in its map, M the mean of the medians, g_c the gain of the
/// colour, g the mean gain, e-/ADU. Differences in level between colours are removed: they are the camera's, not the
/// dark's. A crop is addressed from its own first pixel. A binned pixel holds the mean of its colours, in which equal
/// electrons count 1/g_c each: its gain is b²/Σ(1/g_c) over its b × b pixels.
/// </remarks>
internal sealed class ColourScale
{
    private readonly ColourMosaic mosaic;
    private readonly double[] factors;
    private readonly int width,
        height;

    private ColourScale(ColourMosaic mosaic, double[] factors, int width, int height) =>
        (this.mosaic, this.factors, this.width, this.height) = (mosaic, factors, width, height);

    /// <summary>Makes the scale; null where one gain holds for all colours.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">Its mode.</param>
    /// <param name="gain">The mean gain g.</param>
    public static ColourScale? Find(CameraProfile profile, ModeProfile mode, Measurement? gain)
    {
        IReadOnlyList<ColourMode> colours = ColourModes.Find(mode);
        ColourMosaic mosaic = ColourMosaic.Of(profile.Camera.ColourFilter);
        return gain is not { Value: > 0 } || colours.Count != mosaic.Channels
            ? null
            : new ColourScale(
                mosaic,
                [.. colours.Select(c => c.Mode.Gain!.Value / gain.Value)],
                profile.Camera.Width,
                profile.Camera.Height
            );
    }

    /// <summary>Tells the user that the colours were rescaled.</summary>
    public Finding Notice =>
        new(
            FindingCodes.ColoursApart,
            Severity.Note,
            $"The colours of this camera ({string.Join(", ", mosaic.Names)}) have gains of their own: each was converted to "
                + "electrons by its own gain before the masters were judged, a binned pixel by that of the colours it mixes."
        );

    /// <summary>
    /// The maps on one scale; unchanged when they are not part of the sensor that was characterised.
    /// </summary>
    public Realignment Apply(Realignment aligned)
    {
        FramePart part = aligned.Part;
        return part.WholeWidth != width / part.Block || part.WholeHeight != height / part.Block
            ? aligned
            : aligned with
            {
                Master = aligned.Master with
                {
                    Values = Scaled(aligned.Master.Values, aligned.Master.Width, part, levels: true),
                },
                Fresh = Scaled(aligned.Fresh, part),
                Bias = aligned.Bias is { } bias ? Scaled(bias, part) : null,
            };
    }

    private FreshDarks Scaled(FreshDarks darks, FramePart part) =>
        FreshDarks.Measured(
            darks.Set,
            darks.Width,
            Scaled(darks.Mean, darks.Width, part, levels: true),
            Scaled(darks.HalfDifference, darks.Width, part, levels: false),
            darks.Frames
        );

    private float[] Scaled(float[] map, int columns, FramePart part, bool levels)
    {
        double[] mixes = [.. Enumerable.Range(0, factors.Length).Select(c => OfBlock(c, part.Block))];
        var channels = new int[map.Length];
        for (int i = 0; i < map.Length; i++)
            channels[i] = mosaic.Channel((part.Top + i / columns) * part.Block, (part.Left + i % columns) * part.Block);
        double[] medians = levels
            ? [.. Enumerable.Range(0, factors.Length).Select(c => Level(map, channels, c))]
            : new double[factors.Length];
        // binned by an even factor, all pixels mix the colours alike
        double common = channels.Distinct().Select(c => medians[c]).DefaultIfEmpty(0).Average();
        var scaled = new float[map.Length];
        for (int i = 0; i < map.Length; i++)
            scaled[i] = (float)(common + (map[i] - medians[channels[i]]) * mixes[channels[i]]);
        return scaled;
    }

    /// <summary>
    /// Factor for the mean of b × b pixels whose first pixel belongs to the given channel: b²/Σ(g/g_c).
    /// </summary>
    private double OfBlock(int first, int b)
    {
        double sum = 0;
        for (int y = 0; y < b; y++)
        for (int x = 0; x < b; x++)
            sum += 1 / factors[mosaic.Channel(first / mosaic.Period + y, first % mosaic.Period + x)];
        return b * b / sum;
    }

    private static double Level(float[] map, int[] channels, int channel)
    {
        double[] own = [.. map.Where((v, i) => float.IsFinite(v) && channels[i] == channel).Select(v => (double)v)];
        return own.Length == 0 ? 0 : OrderStatistics.Median(own);
    }
}
