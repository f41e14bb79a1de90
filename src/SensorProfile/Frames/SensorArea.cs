using SensorProfile.Raw;

namespace SensorProfile.Frames;

/// <summary>Which parts of its sensor a raw file holds.</summary>
/// <param name="Active">Area exposed to light.</param>
/// <param name="Masked">Masked areas, as far as the file states them.</param>
/// <param name="MaskedIsNamed">Whether the file names the masked areas (otherwise they are whatever surrounds the
/// active one).</param>
internal sealed record SensorArea(RawArea Active, IReadOnlyList<RawArea> Masked, bool MaskedIsNamed)
{
    /// <summary>The areas of a mosaic.</summary>
    public static SensorArea Of(RawMosaic mosaic) =>
        new(mosaic.ActiveArea, mosaic.MaskedAreas, mosaic.MaskedAreasAreNamed);
}
