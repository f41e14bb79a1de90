using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Pixels;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>
/// Brings the pixels of a camera that scales its colours apart to one scale, so that one gain and one noise hold for all.
/// </summary>
/// <remarks>
/// v′ = M + (v − m_c)·g_c/g: m_c is the median of colour c in its map, M the mean of those, g_c the gain of the colour,
/// g the mean gain, e-/ADU. Levels that differ from colour to colour are taken out: they are the camera's, not the dark's.
/// </remarks>
internal sealed class ColourScale
{
    private readonly ColourMosaic mosaic;
    private readonly double[] factors;
    private readonly int width,
        height;

    private ColourScale(ColourMosaic mosaic, double[] factors, int width, int height) =>
        (this.mosaic, this.factors, this.width, this.height) = (mosaic, factors, width, height);

    /// <summary>Null where one gain holds for all colours.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">Its mode.</param>
    /// <param name="gain">g.</param>
    public static ColourScale? Of(CameraProfile profile, ModeProfile mode, Measurement? gain)
    {
        IReadOnlyList<ColourMode> colours = ColourModes.Of(mode);
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

    /// <summary>Tells the user that it was done.</summary>
    public Finding Said =>
        new(
            "colours-apart",
            Severity.Note,
            $"The colours of this camera ({string.Join(", ", mosaic.Names)}) are scaled apart: each was brought to electrons by "
                + "its own gain before the masters were judged. Cropped and binned masters are judged by the mean gain."
        );

    /// <summary>Maps of the whole sensor on one scale; parts and binned maps, whose colours are mixed, as they are.</summary>
    public (MasterDark Master, FreshDarks Fresh, FreshDarks? Bias) Apply(
        MasterDark master,
        FreshDarks fresh,
        FreshDarks? bias
    ) =>
        fresh.Width != width || fresh.Height != height || master.Width != width || master.Height != height
            ? (master, fresh, bias)
            : (
                master with
                {
                    Values = Scaled(master.Values, levels: true),
                },
                Scaled(fresh),
                bias is { } b && b.Width == width && b.Height == height ? Scaled(b) : bias
            );

    private FreshDarks Scaled(FreshDarks darks) =>
        FreshDarks.Measured(
            darks.Set,
            darks.Width,
            Scaled(darks.Mean, levels: true),
            Scaled(darks.HalfDifference, levels: false),
            darks.Frames
        );

    private float[] Scaled(float[] map, bool levels)
    {
        double[] medians = levels
            ? [.. Enumerable.Range(0, factors.Length).Select(c => Level(map, c))]
            : new double[factors.Length];
        double common = medians.Average();
        var scaled = new float[map.Length];
        for (int i = 0; i < map.Length; i++)
        {
            int channel = mosaic.Channel(i / width, i % width);
            scaled[i] = (float)(common + (map[i] - medians[channel]) * factors[channel]);
        }
        return scaled;
    }

    private double Level(float[] map, int channel)
    {
        double[] own =
        [
            .. map.Where((v, i) => float.IsFinite(v) && mosaic.Channel(i / width, i % width) == channel)
                .Select(v => (double)v),
        ];
        return own.Length == 0 ? 0 : OrderStatistics.Median(own);
    }
}
