using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Structure of the bias level and the response: lines, boundaries, split.</summary>
internal sealed record StructureResult
{
    /// <summary>Columns and rows that stand out in bias frames or flats.</summary>
    public IReadOnlyList<DefectLine> Lines { get; init; } = [];

    /// <summary>Steps between parts of the sensor.</summary>
    public IReadOnlyList<SensorBoundary> Boundaries { get; init; } = [];

    /// <summary>Split of the level without light; null without bias frames.</summary>
    public PatternStructure? Level { get; init; }

    /// <summary>Split of the response; null without flats.</summary>
    public PatternStructure? Response { get; init; }
}
