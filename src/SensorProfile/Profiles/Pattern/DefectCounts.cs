namespace SensorProfile.Profiles.Pattern;

/// <summary>Defect counts by kind.</summary>
public sealed record DefectCounts
{
    /// <summary>Dark rate above the hot threshold and above 6 of its own standard errors.</summary>
    public long Hot { get; init; }

    /// <summary>Between the warm and the hot threshold.</summary>
    public long Warm { get; init; }

    /// <summary>Response or dark signal far below the neighbours.</summary>
    public long Cold { get; init; }

    /// <summary>No response at all.</summary>
    public long Dead { get; init; }

    /// <summary>At the top code in the longest dark.</summary>
    public long Saturated { get; init; }

    /// <summary>Dark rate that depends on the exposure beyond its error.</summary>
    public long NonLinear { get; init; }

    /// <summary>Flickering between levels (random telegraph signal) or far noisier than the camera.</summary>
    public long Flickering { get; init; }

    /// <summary>
    /// Flickering pixels whose frames fall into two or more levels by the level test; null in profiles made before it.
    /// </summary>
    public long? Telegraph { get; init; }

    /// <summary>
    /// At least this many pixels jump between levels or scatter more than noise, signal and the spread of the noise
    /// over all pixels explain; those whose levels cannot be told apart are counted too. Null where it was not tested.
    /// </summary>
    public long? FlickeringAtLeast { get; init; }

    /// <summary>Whole columns that stand out.</summary>
    public long Columns { get; init; }

    /// <summary>Whole rows that stand out.</summary>
    public long Rows { get; init; }

    /// <summary>Groups of touching hot pixels (3 or more).</summary>
    public long Clusters { get; init; }
}
