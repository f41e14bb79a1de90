namespace SensorProfile.Profiles.Darks;

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

    /// <summary>Number of points minus number of parameters.</summary>
    public int DegreesOfFreedom { get; init; }

    /// <summary>Doubling temperature of this model at the reference temperature, °C.</summary>
    public Measurement? DoublingTemperature { get; init; }

    /// <summary>Rate of this model at the reference temperature, e-/px/s.</summary>
    public Measurement? RateAtReference { get; init; }
}
