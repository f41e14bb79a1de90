using SensorProfile.Pixels.Strips;

namespace SensorProfile.Pixels.Pairs;

/// <summary>Pedestal-subtracted sums of one row of one channel in both frames of a pair, ADU.</summary>
internal readonly record struct LightRow(double A, double B)
{
    /// <summary>Sums up the rows of every channel.</summary>
    public static LightRow[][] Measure(
        IFrameSamples a,
        IFrameSamples b,
        ColourMosaic mosaic,
        ChannelPedestals pedestal,
        WalkOptions? options
    )
    {
        var rows = Empty<LightRow>(mosaic, a.Height);
        StripWalker.Walk(
            [a, b],
            strip =>
            {
                var level = new float[strip.Width];
                for (int row = 0; row < strip.Rows; row++)
                {
                    int y = strip.FirstRow + row;
                    pedestal.CopyRow(y, level);
                    for (int x = 0; x < mosaic.Period; x++)
                        rows[mosaic.Channel(y, x)][y / mosaic.Period] = Sum(
                            strip.Row(0, row),
                            strip.Row(1, row),
                            level,
                            x,
                            mosaic.Period
                        );
                }
                return true;
            },
            options
        );
        return rows;
    }

    /// <summary>An array with one slot for each row of each channel.</summary>
    internal static T[][] Empty<T>(ColourMosaic mosaic, int height) =>
        [.. Enumerable.Range(0, mosaic.Channels).Select(channel => new T[mosaic.RowsOf(channel, height)])];

    private static LightRow Sum(
        ReadOnlySpan<ushort> a,
        ReadOnlySpan<ushort> b,
        ReadOnlySpan<float> level,
        int first,
        int period
    )
    {
        long sumA = 0,
            sumB = 0;
        double levels = 0;
        for (int x = first; x < a.Length; x += period)
        {
            sumA += a[x];
            sumB += b[x];
            levels += level[x];
        }
        return new LightRow(sumA - levels, sumB - levels);
    }
}
