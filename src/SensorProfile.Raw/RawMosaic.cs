namespace SensorProfile.Raw;

/// <summary>The sensor as the file describes it: its size, colours, levels and borders.</summary>
/// <remarks>
/// Rows and columns count from 0 at the top left of the stored mosaic; the orientation is never applied.
/// </remarks>
public sealed record RawMosaic
{
    /// <summary>Width of all stored samples including masked borders, px.</summary>
    public required int SensorWidth { get; init; }

    /// <summary>Height of all stored samples including masked borders, px.</summary>
    public required int SensorHeight { get; init; }

    /// <summary>The area exposed to light (DNG ActiveArea); the whole mosaic when the file does not state it.</summary>
    public required RawArea ActiveArea { get; init; }

    /// <summary>Width of the exposed area, px.</summary>
    public int Width => ActiveArea.Width;

    /// <summary>Height of the exposed area, px.</summary>
    public int Height => ActiveArea.Height;

    /// <summary>
    /// Areas never exposed to light, as stated by the file (DNG MaskedAreas); otherwise the borders around
    /// <see cref="ActiveArea"/>.
    /// </summary>
    /// <remarks>
    /// Borders that the file does not explain may hold something other than dark samples: look before you average.
    /// </remarks>
    public required IReadOnlyList<RawArea> MaskedAreas { get; init; }

    /// <summary>
    /// Whether the file names <see cref="MaskedAreas"/> (otherwise they are whatever surrounds the active area).
    /// </summary>
    public required bool MaskedAreasAreNamed { get; init; }

    /// <summary>
    /// The default crop within the active area (DNG DefaultCropOrigin and DefaultCropSize, rounded inwards); null when
    /// the file does not state it.
    /// </summary>
    public RawArea? DefaultCrop { get; init; }

    /// <summary>The colour filter; null for a sensor without one.</summary>
    public RawColourFilter? ColourFilter { get; init; }

    /// <summary>Black level, in linear codes; null when the file does not state it.</summary>
    public RawBlackLevel? BlackLevel { get; init; }

    /// <summary>Saturation level stated by the file, in linear codes; null when there is none.</summary>
    public double? WhiteLevel { get; init; }

    /// <summary>
    /// The curve of the stored codes; null when, as far as the file states, they are proportional to light.
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

    /// <summary>The non-empty borders above, below, left and right of this area of a sensor.</summary>
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
