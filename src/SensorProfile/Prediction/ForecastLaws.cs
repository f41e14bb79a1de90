using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Prediction;

/// <summary>How the pixels of a camera grow with temperature and exposure.</summary>
internal sealed record ForecastLaws
{
    /// <summary>Relative uncertainty of the activation of a pixel whose class has no measured law.</summary>
    private const double AssumedSpread = 0.15;

    /// <summary>Temperature of the maps, °C.</summary>
    public required double Reference { get; init; }

    /// <summary>Rate of the typical pixel against temperature; null when no law could be fitted.</summary>
    public Func<double, double>? Typical { get; init; }

    /// <summary>
    /// The same without a constant floor, for the laws of single pixels; null when the selected law has a floor.
    /// </summary>
    public Func<double, double>? Activation { get; init; }

    /// <summary>Rate of the typical pixel at the reference, e-/px/s.</summary>
    public required double TypicalRate { get; init; }

    /// <summary>Laws by class of rate, for pixels that stand out and have none of their own.</summary>
    public IReadOnlyList<DoublingByRate> Classes { get; init; } = [];

    /// <summary>How the laws of pixels that stand out bend away from the typical one.</summary>
    public LawBend Bend { get; init; }

    /// <summary>How the glow grows.</summary>
    public GlowGrowth Glow { get; init; } = GlowGrowth.Unknown;

    /// <summary>Median correlation of ln rate and activation in the laws of single pixels.</summary>
    public double LawCorrelation { get; init; }

    /// <summary>Share of its pedestal that enters an ordinary pixel's rate, 1/s.</summary>
    public double PedestalShare { get; init; }

    /// <summary>Typical rate at a temperature over that at the reference.</summary>
    public double Factor(double celsius) =>
        Typical is { } law
            ? law(celsius) / law(Reference)
            : Math.Pow(2, (celsius - Reference) / PhysicalConstants.AssumedDoubling);

    /// <summary>
    /// Activation, with its uncertainty, of a pixel by its class of rate: that of the nearest measured class, else the
    /// typical pixel's.
    /// </summary>
    /// <param name="rate">e-/px/s at the reference.</param>
    /// <param name="slope">dx/dT at the reference, 1/°C.</param>
    public (double Activation, double Doubt) OfClass(double rate, double slope)
    {
        DoublingByRate? own = Classes
            .Where(c => c.Doubling.Value > 0)
            .MinBy(c =>
                rate < c.RateFrom ? c.RateFrom / Math.Max(rate, 1e-9)
                : rate > c.RateTo ? rate / c.RateTo
                : 1
            );
        if (own is null)
        {
            double typical = Activation is null ? Math.Log(2) / (PhysicalConstants.AssumedDoubling * slope) : 1;
            return (typical, AssumedSpread * typical);
        }
        double activation = Math.Log(2) / (own.Doubling.Value * slope);
        double spread = Math.Sqrt(
            own.Spread * own.Spread + own.Doubling.StandardUncertainty * own.Doubling.StandardUncertainty
        );
        return (activation, activation * spread / own.Doubling.Value);
    }
}
