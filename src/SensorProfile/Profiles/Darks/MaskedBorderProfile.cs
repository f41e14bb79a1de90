using System.Text.Json.Serialization;

namespace SensorProfile.Profiles.Darks;

/// <summary>
/// What the masked pixels beside the light-sensitive ones (optical black) show: a black level and a read noise of their
/// own, and whether the level of the darks can be trusted.
/// </summary>
/// <remarks>Columns and rows of the border that light reaches or that stand at another level are left out.</remarks>
public sealed record MaskedBorderProfile
{
    /// <summary>First row of the area that was measured, among all stored rows, from 0.</summary>
    public int Top { get; init; }

    /// <summary>First column of the area, among all stored columns, from 0.</summary>
    public int Left { get; init; }

    /// <summary>Number of columns in the area.</summary>
    public int Width { get; init; }

    /// <summary>Number of rows in the area.</summary>
    public int Height { get; init; }

    /// <summary>Number of pixels used.</summary>
    public long Pixels { get; init; }

    /// <summary>
    /// Whether the file names the area; otherwise it is what remains around the pixels that see light.
    /// </summary>
    public bool IsNamed { get; init; }

    /// <summary>Level in the bias frames, ADU.</summary>
    public Measurement? Level { get; init; }

    /// <summary>Level of the pixels that see light minus that of the border, bias frame by bias frame, ADU.</summary>
    public Measurement? Difference { get; init; }

    /// <summary>Read noise from bias pairs, row noise included, quantisation removed, ADU.</summary>
    public Measurement? ReadNoiseAdu { get; init; }

    /// <summary>Temporal noise that the pixels of a row share, from bias pairs, ADU.</summary>
    public Measurement? RowNoiseAdu { get; init; }

    /// <summary>The border in every set of bias and dark frames.</summary>
    [JsonInclude]
    internal IReadOnlyList<MaskedBorderSet> Sets { get; init; } = [];

    /// <summary>The border in every bias and dark frame, in the order of the sets; at most 512, evenly chosen.</summary>
    [JsonInclude]
    internal IReadOnlyList<MaskedBorderFrame> Frames { get; init; } = [];
}
