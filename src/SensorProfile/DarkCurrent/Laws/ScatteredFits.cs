namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// All laws fitted to the points, with the scatter that the uncertainties of the points do not explain.
/// </summary>
/// <param name="Fits">The fits, simplest law first; their covariances allow for the scatter.</param>
/// <param name="TemperatureScatter">The scatter as a temperature error, °C; zero when there is none or it does not look
/// like a temperature error.</param>
/// <param name="RateFactor">Factor by which all rate uncertainties were multiplied instead; 1 when they were
/// not.</param>
/// <param name="Significant">Whether so much scatter has a probability below 5 % by chance.</param>
internal sealed record ScatteredFits(
    IReadOnlyList<FittedLaw> Fits,
    double TemperatureScatter,
    double RateFactor,
    bool Significant
);
