namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// The level that a pixel has without light, in ADU: one value per channel, or a map (a master bias or master dark).
/// </summary>
internal sealed class Pedestal
{
    private readonly float[]? _map;
    private readonly double[] _levels = [];
    private readonly ColourMosaic _mosaic = ColourMosaic.Monochrome;

    private Pedestal(float[] map) => _map = map;

    private Pedestal(ColourMosaic mosaic, double[] levels) => (_mosaic, _levels) = (mosaic, levels);

    /// <summary>The same level for every pixel of a channel.</summary>
    public static Pedestal Level(ColourMosaic mosaic, params double[] levels) =>
        levels.Length == mosaic.Channels
            ? new Pedestal(mosaic, levels)
            : throw new ArgumentException(
                $"{levels.Length} levels were given for {mosaic.Channels} channels.",
                nameof(levels)
            );

    /// <summary>A level for each pixel of the frame, row after row.</summary>
    public static Pedestal Map(float[] map) => new(map);

    /// <summary>Copies the levels of one row of the frame.</summary>
    public void CopyRow(int row, Span<float> levels)
    {
        if (_map is not null)
        {
            _map.AsSpan(row * levels.Length, levels.Length).CopyTo(levels);
            return;
        }
        for (int column = 0; column < levels.Length; column++)
            levels[column] = (float)_levels[_mosaic.Channel(row, column)];
    }

    internal void Check(int width, int height)
    {
        if (_map is not null && _map.Length != width * height)
            throw new ArgumentException(
                $"A pedestal map of {_map.Length} pixels does not fit frames of {width} × {height}."
            );
    }
}
