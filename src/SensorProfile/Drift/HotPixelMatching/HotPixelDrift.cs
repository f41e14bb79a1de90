using SensorProfile.Drift.Patches;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>The hot pixels of two profiles, matched pixel by pixel.</summary>
internal sealed record HotPixelDrift
{
    /// <summary>Settings it holds for, in words.</summary>
    public required string Mode { get; init; }

    /// <summary>Width of the frame, px.</summary>
    public int Width { get; init; }

    /// <summary>Height of the frame, px.</summary>
    public int Height { get; init; }

    /// <summary>Hot in both, or so near the threshold that a change cannot be told from noise.</summary>
    public required long Kept { get; init; }

    /// <summary>Hot now and not before, beyond the noise of both.</summary>
    public required long New { get; init; }

    /// <summary>Hot before and not now, beyond the noise of both.</summary>
    public required long Healed { get; init; }

    /// <summary>Hot in both, and brighter now than the rest of the hot pixels explain.</summary>
    public required long Brighter { get; init; }

    /// <summary>Hot in both, and fainter now than the rest of the hot pixels explain.</summary>
    public required long Fainter { get; init; }

    /// <summary>Left out because they flicker.</summary>
    public required long Flickering { get; init; }

    /// <summary>
    /// Excess over the typical pixel from which a pixel is hot, e-/px/s at the reference temperature.
    /// </summary>
    public required double Threshold { get; init; }

    /// <summary>Factor common to all hot pixels, now over then; null with too few.</summary>
    public Measurement? CommonFactor { get; init; }

    /// <summary>New hot pixels per year and million pixels.</summary>
    public Measurement? NewPerYear { get; init; }

    /// <summary>Healed hot pixels per year and million pixels.</summary>
    public Measurement? HealedPerYear { get; init; }

    /// <summary>Places where new ones stand closer together than chance allows, the surest first.</summary>
    public IReadOnlyList<GrowingPatch> Patches { get; init; } = [];

    /// <summary>The pixels that changed, in order of position.</summary>
    public IReadOnlyList<HotPixelChange> Pixels { get; init; } = [];

    /// <summary>Where those stand that are hot as before, in order of position.</summary>
    public IReadOnlyList<OutlinePoint> Unchanged { get; init; } = [];

    /// <summary>
    /// Growth of the number of hot pixels by those that are new less those that healed, % of the old number per year;
    /// null with too short a time or no old ones.
    /// </summary>
    public Measurement? GrowthPerYear { get; init; }
}
