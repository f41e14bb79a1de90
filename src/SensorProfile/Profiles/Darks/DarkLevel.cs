namespace SensorProfile.Profiles.Darks;

/// <summary>The level of the dark frames of one exposure at one temperature.</summary>
public sealed record DarkLevel
{
    /// <summary>Exposure, s.</summary>
    public double Exposure { get; init; }

    /// <summary>Number of frames.</summary>
    public int Frames { get; init; }

    /// <summary>Median pixel above the pedestal, ADU.</summary>
    public double Median { get; init; }

    /// <summary>Standard uncertainty of the median, ADU.</summary>
    public double MedianUncertainty { get; init; }

    /// <summary>Mean of all pixels above the pedestal, ADU.</summary>
    public double Mean { get; init; }

    /// <summary>Standard uncertainty of the mean, ADU.</summary>
    public double MeanUncertainty { get; init; }

    /// <summary>Clipped temporal variance, ADU²; null with a single frame.</summary>
    public double? Variance { get; init; }

    /// <summary>Standard uncertainty of the variance, ADU².</summary>
    public double? VarianceUncertainty { get; init; }
}
