namespace SensorProfile.Prediction;

/// <summary>Classes of pixels that a prediction is judged by, each for itself.</summary>
internal enum PixelKind : byte
{
    /// <summary>Ordinary pixels.</summary>
    Typical,

    /// <summary>Pixels that stand out of the ordinary ones.</summary>
    Hot,

    /// <summary>Pixels in the glow.</summary>
    Glow,

    /// <summary>Pixels that nothing can be said of.</summary>
    Unknown,
}
