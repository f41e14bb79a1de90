namespace SensorProfile.Raw;

/// <summary>The colour at one position of a filter array.</summary>
public enum RawColour
{
    /// <summary>Red.</summary>
    Red,

    /// <summary>Green.</summary>
    Green,

    /// <summary>Blue.</summary>
    Blue,
}

/// <summary>
/// A colour filter array that repeats every 2 × 2 pixels, as seen from the top left of the active area.
/// </summary>
/// <param name="TopLeft">Colour of even rows and even columns of the active area.</param>
/// <param name="TopRight">Colour of even rows and odd columns.</param>
/// <param name="BottomLeft">Colour of odd rows and even columns.</param>
/// <param name="BottomRight">Colour of odd rows and odd columns.</param>
public sealed record RawColourFilter(RawColour TopLeft, RawColour TopRight, RawColour BottomLeft, RawColour BottomRight)
{
    /// <summary>Remedy for a sensor with another filter.</summary>
    internal const string Remedy =
        "Leave it out: only sensors with a filter of red, green and blue in 2 × 2 pixels, or with none, can be measured here.";

    /// <summary>Four letters, first row first, for example <c>RGGB</c>.</summary>
    public string Name =>
        string.Concat(new[] { TopLeft, TopRight, BottomLeft, BottomRight }.Select(c => c.ToString()[0]));

    /// <summary>The colour of a pixel of the active area.</summary>
    /// <param name="row">Row of the active area, from 0.</param>
    /// <param name="column">Column of the active area, from 0.</param>
    internal RawColour At(int row, int column) =>
        ((row & 1) << 1 | (column & 1)) switch
        {
            0 => TopLeft,
            1 => TopRight,
            2 => BottomLeft,
            _ => BottomRight,
        };
}
