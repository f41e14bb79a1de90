namespace SensorProfile.Raw.Writing;

/// <summary>A frame to be written as DNG.</summary>
public sealed record DngFrame
{
    /// <summary>Columns of the whole sensor, masked borders included.</summary>
    public required int Width { get; init; }

    /// <summary>Rows of the whole sensor, masked borders included.</summary>
    public required int Height { get; init; }

    /// <summary>Width × Height samples, row after row.</summary>
    public required ReadOnlyMemory<ushort> Samples { get; init; }

    /// <summary>Bits of a sample, 8 to 16; no sample is larger.</summary>
    public required int BitsPerSample { get; init; }

    /// <summary>The colour filter from the top left of the active area; null for a sensor without one.</summary>
    public RawColourFilter? ColourFilter { get; init; }

    /// <summary>The part that sees light; null when all of it does.</summary>
    internal RawArea? ActiveArea { get; init; }

    /// <summary>Areas that never see light.</summary>
    internal IReadOnlyList<RawArea> MaskedAreas { get; init; } = [];

    /// <summary>Level of no light; null to say nothing of it.</summary>
    public RawBlackLevel? BlackLevel { get; init; }

    /// <summary>Level of saturation; null to say nothing of it.</summary>
    public double? WhiteLevel { get; init; }

    /// <summary>Linear code of every stored code; null when stored codes are linear.</summary>
    internal IReadOnlyList<ushort>? LinearisationTable { get; init; }

    /// <summary>
    /// How the frame was taken. A temperature is written as AmbientTemperature, whatever its place; treatments are not
    /// written.
    /// </summary>
    public RawFacts Facts { get; init; } = new();
}
