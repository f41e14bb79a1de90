namespace SensorProfile.Profiles.Pattern;

/// <summary>In what a line or a part of the sensor stands out.</summary>
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
