using SensorProfile.FixedPattern.DarkRates;

namespace SensorProfile.Prediction;

/// <summary>Kinds of pixels; a prediction is judged for each of them separately.</summary>
internal enum PixelKind : byte
{
    /// <summary>Ordinary pixels.</summary>
    Typical,

    /// <summary>Pixels that stand out from the ordinary ones.</summary>
    Hot,

    /// <summary>Pixels in the glow.</summary>
    Glow,

    /// <summary>Pixels that jump between levels or scatter far more than the camera's typical pixel.</summary>
    Flickering,

    /// <summary>Pixels about which nothing can be said.</summary>
    Unknown,
}

/// <summary>Which kind a pixel is: the same for trials and for computed darks.</summary>
internal static class PixelKinds
{
    /// <summary>Flags that mark a flickering pixel.</summary>
    public const PixelFlags Flickering = PixelFlags.Flickering | PixelFlags.Levelled;

    /// <summary>The kind.</summary>
    /// <param name="pixel">The pixel.</param>
    /// <param name="flickers">Whether it flickers.</param>
    /// <param name="typicalUncertainty">Uncertainty of an ordinary pixel's rate, e-/px/s: less glow counts as
    /// none.</param>
    public static PixelKind Classify(in PixelState pixel, bool flickers, double typicalUncertainty) =>
        !double.IsFinite(pixel.Rate) ? PixelKind.Unknown
        : flickers ? PixelKind.Flickering
        : pixel.Glow > Math.Max(typicalUncertainty, pixel.Rate / 2) ? PixelKind.Glow
        : pixel.Outstanding ? PixelKind.Hot
        : PixelKind.Typical;
}
