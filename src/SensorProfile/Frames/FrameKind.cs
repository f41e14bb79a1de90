namespace SensorProfile.Frames;

/// <summary>What a frame was taken for.</summary>
public enum FrameKind
{
    /// <summary>Neither the header nor the capture table says.</summary>
    Unknown,

    /// <summary>Shortest exposure, no light.</summary>
    Bias,

    /// <summary>No light.</summary>
    Dark,

    /// <summary>Even light.</summary>
    Flat,

    /// <summary>No light, at the exposure of the flats.</summary>
    DarkFlat,

    /// <summary>The sky.</summary>
    Light,
}
