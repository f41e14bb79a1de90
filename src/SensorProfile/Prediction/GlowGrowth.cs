using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Prediction;

/// <summary>How the glow grows with temperature and exposure, by the law of its strongest place.</summary>
/// <param name="Doubling">Temperature rise that doubles it, °C; null when it could not be determined.</param>
/// <param name="DoublingDoubt">Its standard uncertainty, °C.</param>
/// <param name="Exponent">p of glow ∝ exposure^p; 1 unless it was measured to be another.</param>
/// <param name="LineOfPower">Slope of t^p that a line through the exposures gives, s^(p−1): what the rate in the map
/// stands for.</param>
internal sealed record GlowGrowth(double? Doubling, double DoublingDoubt, double Exponent, double LineOfPower)
{
    private const double MinDeparture = 0.05,
        Sigmas = 3;

    /// <summary>
    /// Error of a glow of unknown law, as a share of the ordinary growth: standard deviation of a uniform distribution
    /// between none and all of it.
    /// </summary>
    private const double UnknownShare = 0.29;

    /// <summary>A glow of which nothing is known.</summary>
    public static GlowGrowth Unknown { get; } = new(null, 0, 1, 1);

    /// <summary>Growth from the places that glow, strongest first.</summary>
    /// <param name="places">Places.</param>
    /// <param name="exposures">Exposures and numbers of frames at the temperature of the map, s.</param>
    public static GlowGrowth Find(
        IReadOnlyList<GlowRegion> places,
        IReadOnlyList<(double Seconds, int Frames)> exposures
    )
    {
        Measurement? doubling = places.Select(p => p.DoublingTemperature).FirstOrDefault(d => d is { Value: > 0 });
        Measurement? exponent = places.Select(p => p.ExposureExponent).FirstOrDefault(p => p is not null);
        bool departs =
            exponent is { Value: > 0 } e
            && Math.Abs(e.Value - 1) > Math.Max(MinDeparture, Sigmas * e.StandardUncertainty);
        double power = departs ? exponent!.Value : 1;
        return new(doubling?.Value, doubling?.StandardUncertainty ?? 0, power, Slope(exposures, power));
    }

    /// <summary>Growth from the reference temperature, with its standard uncertainty.</summary>
    /// <param name="degrees">°C above the reference.</param>
    /// <param name="typical">Growth of the typical pixel.</param>
    public (double Factor, double Doubt) Growth(double degrees, double typical)
    {
        if (Doubling is not { } doubling)
            return (1, UnknownShare * Math.Abs(typical - 1));
        double factor = Math.Pow(2, degrees / doubling);
        return (factor, factor * Math.Log(2) * Math.Abs(degrees) / doubling * DoublingDoubt / doubling);
    }

    /// <summary>Effective exposure: the glow of the map grows in proportion to it, s.</summary>
    public double EquivalentSeconds(double seconds) =>
        Exponent == 1 ? seconds : Math.Pow(seconds, Exponent) / LineOfPower;

    /// <summary>Least-squares slope of t^p against t, weighted by the frames.</summary>
    private static double Slope(IReadOnlyList<(double Seconds, int Frames)> exposures, double power)
    {
        if (power == 1)
            return 1;
        double weight = exposures.Sum(e => e.Frames),
            centre = exposures.Sum(e => e.Frames * e.Seconds) / weight;
        double spread = exposures.Sum(e => e.Frames * (e.Seconds - centre) * (e.Seconds - centre));
        double slope = exposures.Sum(e => e.Frames * (e.Seconds - centre) * Math.Pow(e.Seconds, power)) / spread;
        return slope > 0 ? slope : 1;
    }
}
