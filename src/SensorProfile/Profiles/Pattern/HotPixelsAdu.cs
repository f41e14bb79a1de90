namespace SensorProfile.Profiles.Pattern;

/// <summary>Hot pixels where no gain is known: counted at rates in ADU per pixel and second.</summary>
public sealed record HotPixelsAdu
{
    /// <summary>Pixels with a dark rate above a threshold, ADU/px/s at the reference temperature.</summary>
    public IReadOnlyList<HotPixelCount> Curve { get; init; } = [];

    /// <summary>Dark rate at given shares of the pixels, ADU/px/s at the reference temperature.</summary>
    public IReadOnlyList<RateQuantile> RateQuantiles { get; init; } = [];

    /// <summary>Hot pixels: above the typical pixel by <see cref="HotRate"/>, or full.</summary>
    public long Hot { get; init; }

    /// <summary>Rate above the typical pixel's from which a pixel counts as hot, ADU/px/s.</summary>
    public double HotRate { get; init; }

    /// <summary>Temperature at which the rates hold, °C.</summary>
    public double? ReferenceTemperature { get; init; }
}
