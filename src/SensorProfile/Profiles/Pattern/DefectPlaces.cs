namespace SensorProfile.Profiles.Pattern;

/// <summary>
/// Where on the sensor the defects are; columns and rows are counted from 1 as FITS counts, and the first row of the
/// file is the top one.
/// </summary>
public sealed record DefectPlaces
{
    /// <summary>Hot pixels in each of nine equal parts of the sensor, row after row from the upper left.</summary>
    public IReadOnlyList<DefectArea> Areas { get; init; } = [];

    /// <summary>Groups of touching hot pixels, largest first; at most 20.</summary>
    public IReadOnlyList<DefectCluster> Clusters { get; init; } = [];

    /// <summary>Columns that stand out; at most 50.</summary>
    public IReadOnlyList<int> Columns { get; init; } = [];

    /// <summary>Rows that stand out; at most 50.</summary>
    public IReadOnlyList<int> Rows { get; init; } = [];
}
