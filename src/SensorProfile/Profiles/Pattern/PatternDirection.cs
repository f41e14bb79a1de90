namespace SensorProfile.Profiles.Pattern;

/// <summary>Which way a pattern repeats, or how the parts of a sensor lie.</summary>
public enum PatternDirection
{
    /// <summary>From column to column: parts lie side by side.</summary>
    Across,

    /// <summary>From row to row, in the order of the file: one part is below the other.</summary>
    Down,
}

/// <summary>Which lines of the sensor.</summary>
public enum LineDirection
{
    /// <summary>A column.</summary>
    Column,

    /// <summary>A row.</summary>
    Row,
}

/// <summary>What a line or a part of the sensor stands out in.</summary>
public enum PatternKind
{
    /// <summary>Rate in the dark, e-/px/s.</summary>
    Dark,

    /// <summary>Level of the bias frames, ADU.</summary>
    Level,

    /// <summary>Noise of the bias frames, %.</summary>
    Noise,

    /// <summary>Response to light, by the flats, %.</summary>
    Response,
}
