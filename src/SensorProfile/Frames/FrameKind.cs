namespace SensorProfile.Frames;

/// <summary>The kind of a frame.</summary>
public enum FrameKind
{
    /// <summary>Neither the header nor the capture table gives it.</summary>
    Unknown,

    /// <summary>Shortest exposure, no light.</summary>
    Bias,

    /// <summary>No light.</summary>
    Dark,

    /// <summary>Even illumination.</summary>
    Flat,

    /// <summary>No light, with the exposure of the flats.</summary>
    DarkFlat,

    /// <summary>The sky.</summary>
    Light,
}
