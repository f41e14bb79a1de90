namespace SensorProfile.Profiles.Pattern;

/// <summary>Which lines of the sensor.</summary>
public enum LineDirection
{
    /// <summary>A column.</summary>
    Column,

    /// <summary>A row.</summary>
    Row,
}
