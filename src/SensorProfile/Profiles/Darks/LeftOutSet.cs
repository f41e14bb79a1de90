namespace SensorProfile.Profiles.Darks;

/// <summary>One set of darks that was left out and computed from the rest.</summary>
internal sealed record LeftOutSet
{
    /// <summary>Temperature, °C.</summary>
    public double Temperature { get; init; }

    /// <summary>Exposure, s.</summary>
    public double Exposure { get; init; }

    /// <summary>Number of frames in the set.</summary>
    public int Frames { get; init; }

    /// <summary>What was left out: "set" (this set alone), or "temperature" (all darks of this temperature).</summary>
    public string LeftOut { get; init; } = "set";

    /// <summary>Whether the rest lies on one side of it, so that it was extrapolated.</summary>
    public bool Extrapolated { get; init; }

    /// <summary>Common level of the set minus the computed one, e-.</summary>
    public double Level { get; init; }

    /// <summary>Ordinary pixels; null when there were too few.</summary>
    public PredictionFigures? Typical { get; init; }

    /// <summary>Pixels that stand out from the ordinary ones.</summary>
    public PredictionFigures? Hot { get; init; }

    /// <summary>Pixels in the glow of the electronics.</summary>
    public PredictionFigures? Glow { get; init; }

    /// <summary>Pixels that flicker.</summary>
    public PredictionFigures? Flickering { get; init; }
}
