namespace SensorProfile.Profiles.Darks;

/// <summary>
/// A class of pixels in the trials of computed darks, and the uncertainty that may be claimed for it.
/// </summary>
/// <remarks>
/// Claimed variance of a pixel: varianceFactor·V + (commonShare·S)², V the variance from noise and laws, S its signal
/// above the typical pixel's. Nothing is claimed for a class that is refused.
/// </remarks>
internal sealed record PredictionClass
{
    /// <summary>Kind of pixels: "typical", "hot", "glow" or "flickering".</summary>
    public string Pixels { get; init; } = "typical";

    /// <summary>
    /// Signal above the typical pixel's at which the class of hot pixels begins, in units of the noise of an ordinary
    /// pixel in one frame; 0 for the faintest class and for other kinds.
    /// </summary>
    public double FromNoise { get; init; }

    /// <summary>Signal at which it ends, in the same unit; null for no end.</summary>
    public double? ToNoise { get; init; }

    /// <summary>Number of pixels compared, over all sets.</summary>
    public long Compared { get; init; }

    /// <summary>Share of them within the 95 % intervals from noise and laws alone, 0…1.</summary>
    public double PlainCoverage { get; init; }

    /// <summary>Share of them within the intervals that are claimed.</summary>
    public double Coverage { get; init; }

    /// <summary>Factor on the variance of single pixels, at least 1.</summary>
    public double VarianceFactor { get; init; } = 1;

    /// <summary>Standard uncertainty that all pixels of the class share, as a share of their signal above the typical
    /// one.</summary>
    public double CommonShare { get; init; }

    /// <summary>Robust standard deviation of computed minus taken, e-.</summary>
    public Measurement? Residual { get; init; }

    /// <summary>Typical standard uncertainty of the difference, as claimed, e-.</summary>
    public double Expected { get; init; }

    /// <summary>Why nothing is claimed; null where something is.</summary>
    public ClassRefusal? Refused { get; init; }
}

/// <summary>Why nothing is claimed for a class of pixels.</summary>
internal enum ClassRefusal
{
    /// <summary>The darks that were left out hold too few of its pixels to judge it.</summary>
    TooFew,

    /// <summary>All its pixels share an error of more than a tenth of their signal.</summary>
    CommonError,

    /// <summary>Its pixels change from set to set.</summary>
    Unsteady,
}
