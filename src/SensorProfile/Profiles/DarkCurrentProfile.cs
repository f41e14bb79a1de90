namespace SensorProfile.Profiles;

/// <summary>Dark current against exposure and temperature.</summary>
public sealed record DarkCurrentProfile
{
    /// <summary>One entry per temperature, coldest first.</summary>
    public IReadOnlyList<DarkCurrentPoint> Points { get; init; } = [];

    /// <summary>Every model that could be fitted to the points.</summary>
    public IReadOnlyList<DarkCurrentModel> Models { get; init; } = [];

    /// <summary>Name of the model behind <see cref="RateAtReference"/> and the predictions; null when none could be fitted.</summary>
    public string? Selected { get; init; }

    /// <summary>Temperature rise that doubles dark current at the reference temperature, °C.</summary>
    public Measurement? DoublingTemperature { get; init; }

    /// <summary>Temperature at which the reference values hold, °C.</summary>
    public double? ReferenceTemperature { get; init; }

    /// <summary>Dark current of the typical pixel at the reference temperature, e-/px/s.</summary>
    public Measurement? RateAtReference { get; init; }

    /// <summary>Coldest and warmest temperature measured, °C; null without points.</summary>
    public IReadOnlyList<double>? MeasuredRange { get; init; }

    /// <summary>"level" when the models describe the level form, "variance" where the camera pins its level.</summary>
    public string Form { get; init; } = "level";
}

/// <summary>Dark current at one temperature.</summary>
public sealed record DarkCurrentPoint
{
    /// <summary>Mean sensor temperature as read, °C.</summary>
    public double Temperature { get; init; }

    /// <summary>Dark rate of the median pixel, e-/px/s.</summary>
    public Measurement? TypicalRate { get; init; }

    /// <summary>Dark rate of all pixels, e-/px/s.</summary>
    public Measurement? MeanRate { get; init; }

    /// <summary>Dark rate from the growth of the temporal variance, defects clipped, e-/px/s.</summary>
    public Measurement? RateFromVariance { get; init; }

    /// <summary>When the level form could not be resolved: the rate that would have been seen, e-/px/s (95 %).</summary>
    public double? UpperLimit { get; init; }

    /// <summary>Exposures, s, ascending.</summary>
    public IReadOnlyList<double> Exposures { get; init; } = [];

    /// <summary>Frames used.</summary>
    public int Frames { get; init; }

    /// <summary>Whether the level grew in proportion to the exposure within its errors.</summary>
    public bool Linear { get; init; }

    /// <summary>The levels behind the lines, one per exposure.</summary>
    public IReadOnlyList<DarkLevel> Levels { get; init; } = [];
}

/// <summary>The level of the dark frames of one exposure at one temperature.</summary>
public sealed record DarkLevel
{
    /// <summary>Exposure, s.</summary>
    public double Exposure { get; init; }

    /// <summary>Frames.</summary>
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

/// <summary>A temperature law fitted to the points.</summary>
public sealed record DarkCurrentModel
{
    /// <summary>doubling, arrhenius or two-process, each also with "+floor".</summary>
    public string Name { get; init; } = "";

    /// <summary>The parameters, named, with their uncertainties.</summary>
    public IReadOnlyList<ModelParameter> Parameters { get; init; } = [];

    /// <summary>Covariance of the parameters in the order given.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Covariance { get; init; } = [];

    /// <summary>Corrected Akaike criterion; smaller is better.</summary>
    public double? InformationCriterion { get; init; }

    /// <summary>Akaike weight among the fitted models, 0…1.</summary>
    public double? Weight { get; init; }

    /// <summary>χ² of the fit.</summary>
    public double ChiSquared { get; init; }

    /// <summary>Points less parameters.</summary>
    public int DegreesOfFreedom { get; init; }

    /// <summary>Doubling temperature of this model at the reference temperature, °C.</summary>
    public Measurement? DoublingTemperature { get; init; }

    /// <summary>Rate of this model at the reference temperature, e-/px/s.</summary>
    public Measurement? RateAtReference { get; init; }
}

/// <summary>One parameter of a model: a quantity with a name.</summary>
/// <param name="Name">rateAtReference, doublingTemperature, activationEnergy, diffusion, depletion, floor …</param>
/// <param name="Value">The best estimate.</param>
/// <param name="StandardUncertainty">One standard uncertainty, in the unit of the value.</param>
/// <param name="Unit">Unit as printed.</param>
/// <param name="Samples">Points behind the fit.</param>
/// <param name="Method">The fit.</param>
public sealed record ModelParameter(string Name, double Value, double StandardUncertainty, string Unit, long Samples, string Method);
