namespace SensorProfile.Pixels;

/// <summary>
/// Which pixels share a channel: all of them (monochrome), or each of the four positions of a 2 × 2 colour filter
/// array.
/// </summary>
/// <param name="Period">1 or 2: rows and columns after which the pattern repeats.</param>
/// <param name="Names">One name per channel, in the order of <see cref="Channel"/>.</param>
internal sealed record ColourMosaic(int Period, IReadOnlyList<string> Names)
{
    /// <summary>One channel, called "mono".</summary>
    public static ColourMosaic Monochrome { get; } = new(1, ["mono"]);

    /// <summary>Number of channels, 1 or 4.</summary>
    public int Channels => Period * Period;

    /// <summary>
    /// Channel of a pixel: (row mod 2)·2 + (column mod 2), rows and columns counted from the first of the file.
    /// </summary>
    public int Channel(int row, int column) => row % Period * Period + column % Period;

    /// <summary>Rows of a frame that hold pixels of a channel.</summary>
    public int RowsOf(int channel, int height) => (height - channel / Period + Period - 1) / Period;

    /// <summary>Pixels of a channel in each of its rows.</summary>
    public int ColumnsOf(int channel, int width) => (width - channel % Period + Period - 1) / Period;

    /// <summary>
    /// The mosaic of a colour filter as the inventory states it: four letters in file order, or null.
    /// </summary>
    /// <remarks>The letter that stands twice gets a number, in file order: RGGB gives R, G1, G2, B.</remarks>
    /// <exception cref="ArgumentException">The filter is neither null nor four letters long.</exception>
    public static ColourMosaic Of(string? colourFilter)
    {
        if (string.IsNullOrEmpty(colourFilter))
            return Monochrome;
        if (colourFilter.Length != 4)
            throw new ArgumentException(
                $"'{colourFilter}' is not a 2 × 2 colour filter array; only four letters such as RGGB are "
                    + "understood.",
                nameof(colourFilter)
            );
        var names = new string[4];
        for (int i = 0; i < 4; i++)
        {
            char colour = colourFilter[i];
            bool repeated = colourFilter.Count(other => other == colour) > 1;
            names[i] = repeated ? $"{colour}{colourFilter[..i].Count(other => other == colour) + 1}" : $"{colour}";
        }
        return new ColourMosaic(2, names);
    }
}
