namespace SensorProfile.Profiles.Darks;

/// <summary>A way to come by a master dark, tried on sets of darks that were left out.</summary>
public sealed record PredictionTest
{
    /// <summary>
    /// Whether computed and taken masters agree within their uncertainty: of a computed dark the one that is claimed,
    /// class by class.
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

    /// <summary>Pixels that flicker.</summary>
    public PredictionFigures? Flickering { get; init; }

    /// <summary>
    /// What is claimed of a computed dark class by class of its pixels; empty for plain ways and profiles of earlier
    /// versions.
    /// </summary>
    public IReadOnlyList<PredictionClass> Classes { get; init; } = [];

    /// <summary>How far the common level of these sets was off where there was little dark signal, e-.</summary>
    public double? LevelDoubt { get; init; }

    /// <summary>The same beyond that, as a share of the typical pixel's dark signal, 0…1.</summary>
    public double? LevelDoubtShare { get; init; }

    /// <summary>Kind of pixels that failed: "typical", "hot" or "glow"; null when it passed.</summary>
    public string? FailedBy { get; init; }
}
