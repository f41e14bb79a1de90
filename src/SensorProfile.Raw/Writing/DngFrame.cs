namespace SensorProfile.Raw.Writing;

/// <summary>A frame to write as DNG.</summary>
public sealed record DngFrame
{
    /// <summary>Columns of the whole sensor, including masked borders.</summary>
    public required int Width { get; init; }

    /// <summary>Rows of the whole sensor, including masked borders.</summary>
    public required int Height { get; init; }

    /// <summary>Width × Height samples, row by row.</summary>
    public required ReadOnlyMemory<ushort> Samples { get; init; }

    /// <summary>Bits per sample, 8 to 16; no sample is larger.</summary>
    public required int BitsPerSample { get; init; }

    /// <summary>The colour filter from the top left of the active area; null for a sensor without one.</summary>
    public RawColourFilter? ColourFilter { get; init; }

    /// <summary>The area exposed to light; null for the whole sensor.</summary>
    internal RawArea? ActiveArea { get; init; }

    /// <summary>Areas never exposed to light.</summary>
    internal IReadOnlyList<RawArea> MaskedAreas { get; init; } = [];

    /// <summary>Black level; null to leave it out.</summary>
    public RawBlackLevel? BlackLevel { get; init; }

    /// <summary>Saturation level; null to leave it out.</summary>
    public double? WhiteLevel { get; init; }

    /// <summary>Linear code of every stored code; null when stored codes are linear.</summary>
    internal IReadOnlyList<ushort>? LinearisationTable { get; init; }

    /// <summary>
    /// Conditions of the frame. A temperature is written as AmbientTemperature, wherever it was measured; treatments
    /// are not written.
    /// </summary>
    public RawFacts Facts { get; init; } = new();
}
