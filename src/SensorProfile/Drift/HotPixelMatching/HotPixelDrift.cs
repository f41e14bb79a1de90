using SensorProfile.Drift.Patches;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>The hot pixels of two profiles, matched pixel by pixel.</summary>
internal sealed record HotPixelDrift
{
    /// <summary>Settings of the mode, in words.</summary>
    public required string Mode { get; init; }

    /// <summary>Width of the frame, px.</summary>
    public int Width { get; init; }

    /// <summary>Height of the frame, px.</summary>
    public int Height { get; init; }

    /// <summary>Hot in both, or so near the threshold that a change cannot be told from noise.</summary>
    public required long Kept { get; init; }

    /// <summary>Hot now but not before, beyond the noise of both.</summary>
    public required long New { get; init; }

    /// <summary>Hot before but not now, beyond the noise of both.</summary>
    public required long Healed { get; init; }

    /// <summary>Hot in both, and brighter now by more than the factor common to all hot pixels.</summary>
    public required long Brighter { get; init; }

    /// <summary>Hot in both, and fainter now by more than the factor common to all hot pixels.</summary>
    public required long Fainter { get; init; }

    /// <summary>Left out because they flicker.</summary>
    public required long Flickering { get; init; }

    /// <summary>
    /// Excess over the typical pixel from which a pixel is hot, e-/px/s at the reference temperature.
    /// </summary>
    public required double Threshold { get; init; }

    /// <summary>Factor common to all hot pixels, now over then; null with too few of them.</summary>
    public Measurement? CommonFactor { get; init; }

    /// <summary>New hot pixels per year and million pixels.</summary>
    public Measurement? NewPerYear { get; init; }

    /// <summary>Healed hot pixels per year and million pixels.</summary>
    public Measurement? HealedPerYear { get; init; }

    /// <summary>Places where new hot pixels lie closer together than chance allows, most significant first.</summary>
    public IReadOnlyList<GrowingPatch> Patches { get; init; } = [];

    /// <summary>The pixels that changed, ordered by position.</summary>
    public IReadOnlyList<HotPixelChange> Pixels { get; init; } = [];

    /// <summary>Positions of the pixels that stayed hot, in order.</summary>
    public IReadOnlyList<OutlinePoint> Unchanged { get; init; } = [];

    /// <summary>
    /// Net growth of the number of hot pixels (new less healed), % of the old number per year; null when the time is
    /// too short or there were no old ones.
    /// </summary>
    public Measurement? GrowthPerYear { get; init; }
}
