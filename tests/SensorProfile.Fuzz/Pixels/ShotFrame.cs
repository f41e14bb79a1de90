namespace SensorProfile.Fuzz.Pixels;

/// <summary>A frame as it will be written: what its header says and its samples, both open to nonsense.</summary>
internal sealed record ShotFrame
{
    public required string Name { get; init; }

    public required string Kind { get; init; }

    public object? Exposure { get; set; }

    public object? Temperature { get; set; }

    public object? Gain { get; set; } = 100L;

    public required int Width { get; set; }

    public required int Height { get; set; }

    public required ushort[] Samples { get; set; }

    /// <summary>Samples as float, in place of the codes; null for codes.</summary>
    public float[]? Floats { get; set; }

    /// <summary>Stored as signed numbers, so that half of the codes are negative.</summary>
    public bool Signed { get; set; }

    public string? ColourFilter { get; set; }

    public DateTime Start { get; set; }
}
