namespace SensorProfile.Pixels.Pairs;

/// <summary>Level without light, ADU: one value per channel.</summary>
internal sealed class ChannelPedestals
{
    private readonly double[] _levels;
    private readonly ColourMosaic _mosaic;

    private ChannelPedestals(ColourMosaic mosaic, double[] levels) => (_mosaic, _levels) = (mosaic, levels);

    /// <summary>The same level for every pixel of a channel.</summary>
    public static ChannelPedestals Level(ColourMosaic mosaic, params double[] levels) =>
        levels.Length == mosaic.Channels
            ? new ChannelPedestals(mosaic, levels)
            : throw new ArgumentException(
                $"{levels.Length} levels were given for {mosaic.Channels} channels.",
                nameof(levels)
            );

    /// <summary>Copies the levels of one row of the frame.</summary>
    public void CopyRow(int row, Span<float> levels)
    {
        for (int column = 0; column < levels.Length; column++)
            levels[column] = (float)_levels[_mosaic.Channel(row, column)];
    }
}
