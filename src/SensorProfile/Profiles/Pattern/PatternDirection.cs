namespace SensorProfile.Profiles.Pattern;

/// <summary>Which way a pattern repeats, or the parts of a sensor lie.</summary>
public enum PatternDirection
{
    /// <summary>From column to column: parts lie side by side.</summary>
    Across,

    /// <summary>From row to row, the first of the file first: one part is below the other.</summary>
    Down,
}
