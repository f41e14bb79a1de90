namespace SensorProfile.Raw;

/// <summary>The sensor as the file describes it: its size, colours, levels and borders.</summary>
/// <remarks>Rows and columns count from 0 at the top left of the stored mosaic; orientation is never applied.</remarks>
public sealed record RawMosaic
{
    /// <summary>Width of all stored samples, masked borders included, px.</summary>
    public required int SensorWidth { get; init; }

    /// <summary>Height of all stored samples, masked borders included, px.</summary>
    public required int SensorHeight { get; init; }

    /// <summary>The part that sees light (DNG ActiveArea); all of the mosaic when the file says nothing.</summary>
    public required RawArea ActiveArea { get; init; }

    /// <summary>Width of the part that sees light, px.</summary>
    public int Width => ActiveArea.Width;

    /// <summary>Height of the part that sees light, px.</summary>
    public int Height => ActiveArea.Height;

    /// <summary>
    /// Areas that never see light, as the file says (DNG MaskedAreas) or, when it is silent, the borders around
    /// <see cref="ActiveArea"/>.
    /// </summary>
    /// <remarks>
    /// Borders that the file leaves unexplained may hold something else than dark samples: look before you average.
    /// </remarks>
    public required IReadOnlyList<RawArea> MaskedAreas { get; init; }

    /// <summary>
    /// Whether <see cref="MaskedAreas"/> are named by the file (else they are what is left around the active area).
    /// </summary>
    public required bool MaskedAreasAreNamed { get; init; }

    /// <summary>
    /// The default crop within the active area (DNG DefaultCropOrigin and DefaultCropSize, rounded inwards); null when
    /// the file says nothing.
    /// </summary>
    public RawArea? DefaultCrop { get; init; }

    /// <summary>The colour filter; null for a sensor without one.</summary>
    public RawColourFilter? ColourFilter { get; init; }

    /// <summary>Level of no light, in linear codes; null when the file says nothing.</summary>
    public RawBlackLevel? BlackLevel { get; init; }

    /// <summary>Level of saturation as the file says it, in linear codes; null when the file says nothing.</summary>
    public double? WhiteLevel { get; init; }

    /// <summary>
    /// The curve that the stored codes follow; null when they are proportional to light, as far as the file says.
    /// </summary>
    public RawLinearisation? Linearisation { get; init; }
}

/// <summary>A rectangle of samples.</summary>
/// <param name="Top">First row.</param>
/// <param name="Left">First column.</param>
/// <param name="Bottom">Row after the last one.</param>
/// <param name="Right">Column after the last one.</param>
public readonly record struct RawArea(int Top, int Left, int Bottom, int Right)
{
    /// <summary>Columns.</summary>
    public int Width => Right - Left;

    /// <summary>Rows.</summary>
    public int Height => Bottom - Top;

    /// <summary>The borders above, below, left and right of this area of a sensor that are there.</summary>
    /// <param name="width">Width of all stored samples, px.</param>
    /// <param name="height">Height of all stored samples, px.</param>
    internal IEnumerable<RawArea> Around(int width, int height)
    {
        RawArea[] borders =
        [
            new(0, 0, Top, width),
            new(Bottom, 0, height, width),
            new(Top, 0, Bottom, Left),
            new(Top, Right, Bottom, width),
        ];
        return borders.Where(border => border.Width > 0 && border.Height > 0);
    }
}
