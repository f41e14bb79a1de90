namespace SensorProfile.Profiles.Darks;

/// <summary>A class of pixels in the trials of computed darks, and what may be claimed of it.</summary>
/// <remarks>Claimed variance of a pixel: varianceFactor·V + (commonShare·S)², V what noise and laws give it, S its signal
/// above the typical pixel's. Nothing is claimed of a class that is refused.</remarks>
public sealed record PredictionClass
{
    /// <summary>Kind of pixels: "typical", "hot", "glow" or "flickering".</summary>
    public string Pixels { get; init; } = "typical";

    /// <summary>
    /// Signal above the typical pixel's from which a hot pixel belongs to it, in noises of an ordinary pixel in one
    /// frame; 0 for the faintest class and for other kinds.
    /// </summary>
    public double FromNoise { get; init; }

    /// <summary>The same at which it ends; null for no end.</summary>
    public double? ToNoise { get; init; }

    /// <summary>Pixels compared, over all sets.</summary>
    public long Compared { get; init; }

    /// <summary>Share of them within the 95 % intervals that noise and laws give, 0…1.</summary>
    public double PlainCoverage { get; init; }

    /// <summary>The same within the intervals that are claimed.</summary>
    public double Coverage { get; init; }

    /// <summary>Factor of the variance of single pixels, at least 1.</summary>
    public double VarianceFactor { get; init; } = 1;

    /// <summary>Standard uncertainty that all pixels of the class share, as a share of their signal above the typical
    /// one.</summary>
    public double CommonShare { get; init; }

    /// <summary>Robust standard deviation of computed minus taken, e-.</summary>
    public Measurement? Residual { get; init; }

    /// <summary>Typical standard uncertainty of the difference, as claimed, e-.</summary>
    public double Expected { get; init; }

    /// <summary>Why nothing is claimed; null where it is.</summary>
    public ClassRefusal? Refused { get; init; }
}

/// <summary>Why nothing is claimed of a class of pixels.</summary>
public enum ClassRefusal
{
    /// <summary>Its pixels in the darks that were left out are too few to judge it.</summary>
    TooFew,

    /// <summary>All of its pixels are off together by more than a tenth.</summary>
    CommonError,

    /// <summary>Its pixels change from set to set.</summary>
    Unsteady,
}
