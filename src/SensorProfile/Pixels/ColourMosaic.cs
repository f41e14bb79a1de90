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
    /// Channel of a pixel: (row mod 2)·2 + (column mod 2), counted from the first row and column of the file.
    /// </summary>
    public int Channel(int row, int column) => row % Period * Period + column % Period;

    /// <summary>Number of rows of a frame that contain a channel.</summary>
    public int RowsOf(int channel, int height) => (height - channel / Period + Period - 1) / Period;

    /// <summary>Number of pixels of a channel in each of its rows.</summary>
    public int ColumnsOf(int channel, int width) => (width - channel % Period + Period - 1) / Period;

    /// <summary>
    /// The mosaic of a colour filter as listed in the inventory: four letters in file order, or null for monochrome.
    /// </summary>
    /// <remarks>A letter that occurs twice is numbered in file order: RGGB gives R, G1, G2, B.</remarks>
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
