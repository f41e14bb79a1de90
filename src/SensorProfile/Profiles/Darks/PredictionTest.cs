namespace SensorProfile.Profiles.Darks;

/// <summary>A way to come by a master dark, tried on sets of darks that were left out.</summary>
public sealed record PredictionTest
{
    /// <summary>
    /// Whether computed and taken masters agree within their uncertainty, for ordinary, hot and glowing pixels.
    /// </summary>
    public bool Passed { get; init; }

    /// <summary>Sets it was tried on.</summary>
    public int Sets { get; init; }

    /// <summary>Ordinary pixels; null when there were too few.</summary>
    public PredictionFigures? Typical { get; init; }

    /// <summary>Pixels that stand out of the ordinary ones.</summary>
    public PredictionFigures? Hot { get; init; }

    /// <summary>Pixels in the glow of the electronics.</summary>
    public PredictionFigures? Glow { get; init; }

    /// <summary>Class of pixels that failed: "typical", "hot" or "glow"; null when it passed.</summary>
    public string? FailedBy { get; init; }
}
