using SensorProfile.Raw;

namespace SensorProfile.Frames;

/// <summary>What a raw file holds of its sensor.</summary>
/// <param name="Active">The samples that see light.</param>
/// <param name="Masked">Areas that see none, as far as the file says.</param>
/// <param name="MaskedIsNamed">Whether the file names those areas (else they are what is left around the active
/// one).</param>
internal sealed record SensorArea(RawArea Active, IReadOnlyList<RawArea> Masked, bool MaskedIsNamed)
{
    /// <summary>That of a mosaic.</summary>
    public static SensorArea Of(RawMosaic mosaic) =>
        new(mosaic.ActiveArea, mosaic.MaskedAreas, mosaic.MaskedAreasAreNamed);
}
