namespace SensorProfile.Profiles.Darks;

/// <summary>A way of making a master dark, tried on sets of darks that were left out.</summary>
internal sealed record PredictionTest
{
    /// <summary>
    /// Whether computed and taken masters agree within their uncertainty; for a computed dark, within the one claimed
    /// class by class.
    /// </summary>
    public bool Passed { get; init; }

    /// <summary>Number of sets it was tried on.</summary>
    public int Sets { get; init; }

    /// <summary>Ordinary pixels; null when there were too few.</summary>
    public PredictionFigures? Typical { get; init; }

    /// <summary>Pixels that stand out from the ordinary ones.</summary>
    public PredictionFigures? Hot { get; init; }

    /// <summary>Pixels in the glow of the electronics.</summary>
    public PredictionFigures? Glow { get; init; }

    /// <summary>Pixels that flicker.</summary>
    public PredictionFigures? Flickering { get; init; }

    /// <summary>
    /// What is claimed for each class of pixels of a computed dark; empty for plain ways and in profiles of earlier
    /// versions.
    /// </summary>
    public IReadOnlyList<PredictionClass> Classes { get; init; } = [];

    /// <summary>Error of the common level of these sets where there was little dark signal, e-.</summary>
    public double? LevelDoubt { get; init; }

    /// <summary>Further error of the common level, as a share of the typical pixel's dark signal, 0…1.</summary>
    public double? LevelDoubtShare { get; init; }

    /// <summary>Kind of pixels that failed: "typical", "hot" or "glow"; null when it passed.</summary>
    public string? FailedBy { get; init; }
}
