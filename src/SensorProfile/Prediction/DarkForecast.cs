using SensorProfile.FixedPattern.DarkRates;

namespace SensorProfile.Prediction;

/// <summary>The dark signal of any pixel at one temperature and exposure.</summary>
/// <remarks>
/// Ordinary pixels: S = (I − G)·F·t + G·g·t', F the growth of the typical pixel, G the glow with its own growth g and
/// exposure law t'. Pixels that stand out: S = I·exp(a·x)·t, a their own activation (ln 2/(ΔT₂·dx/dT)) or that of their
/// class, x as in <see cref="PixelLaw"/>; the glow's departure from proportion is added. The uncertainty comes from the
/// rate; from the activation, with its correlation; for ordinary pixels above the typical rate, from 10 % of
/// activation; and from the glow's law. What all pixels share (typical rate, gain, level) is not included.
/// </remarks>
internal sealed class DarkForecast
{
    private const double MinOfGlow = 0.5,
        MaxOfGlow = 1.5;

    private readonly ForecastLaws laws;
    private readonly double seconds,
        factor,
        x, // of pixels that stand out
        slope,
        glowFactor,
        glowDoubt,
        glowSeconds;

    /// <summary>A forecast for one temperature and exposure.</summary>
    public DarkForecast(ForecastLaws laws, double celsius, double seconds)
    {
        (this.laws, this.seconds) = (laws, seconds);
        factor = laws.Factor(celsius);
        x = laws.Bend.At(PixelLaw.Abscissa(laws.Activation, laws.Reference, celsius));
        slope = PixelLaw.SlopePerDegree(laws.Activation, laws.Reference);
        (glowFactor, glowDoubt) = laws.Glow.Growth(celsius - laws.Reference, factor);
        glowSeconds = laws.Glow.EquivalentSeconds(seconds);
    }

    /// <summary>Signal of the typical pixel, e-.</summary>
    public double Typical => laws.TypicalRate * factor * seconds;

    /// <summary>Signal above the pedestal and variance of the whole prediction, e- and e-².</summary>
    /// <param name="pixel">The pixel.</param>
    /// <param name="pedestalVariance">Variance of its pedestal, e-².</param>
    public (double Electrons, double Variance) Predict(in PixelState pixel, double pedestalVariance)
    {
        bool alone = pixel.Outstanding && !InGlow(pixel);
        (double electrons, double variance) = alone ? Outstanding(pixel) : Ordinary(pixel);
        // A pedestal that came out high has lowered the rate where it took part in the line: the two errors partly
        // cancel.
        double together = pixel.Outstanding ? 0 : 2 * factor * seconds * laws.PedestalShare * pedestalVariance;
        return (electrons, Math.Max(variance + together, 0) + pedestalVariance);
    }

    /// <summary>Whether the glow explains by itself that a pixel stands out.</summary>
    private bool InGlow(in PixelState pixel) =>
        pixel.Glow > 0 && pixel.Rate - laws.TypicalRate < MaxOfGlow * pixel.Glow;

    /// <summary>
    /// Part of an ordinary pixel's rate that is glow: what it has above the typical pixel, as far as the smooth map of
    /// the glow, which blurs steep places, allows.
    /// </summary>
    private double Lit(in PixelState pixel) =>
        pixel.Glow > 0 ? Math.Clamp(pixel.Rate - laws.TypicalRate, MinOfGlow * pixel.Glow, MaxOfGlow * pixel.Glow) : 0;

    private (double Electrons, double Variance) Ordinary(in PixelState pixel)
    {
        double lit = Lit(pixel),
            electrons = (pixel.Rate - lit) * factor * seconds + lit * glowFactor * glowSeconds;
        // The noise of the rate may belong to its glow, which need not fade as fast.
        double noise =
                (lit > 0 ? Math.Max(factor * seconds, glowFactor * glowSeconds) : factor * seconds) * pixel.Uncertainty,
            above = Math.Max(0, pixel.Rate - lit - laws.TypicalRate);
        double law = ReferenceScale.LawSpread * Math.Log(factor) * above * factor * seconds,
            glow = lit * glowSeconds * glowDoubt;
        return (electrons, noise * noise + law * law + glow * glow);
    }

    private (double Electrons, double Variance) Outstanding(in PixelState pixel)
    {
        bool own = pixel.Doubling > 0 && double.IsFinite(pixel.DoublingUncertainty);
        double activation,
            doubt;
        if (own)
        {
            activation = Math.Log(2) / (pixel.Doubling * slope);
            doubt = activation * pixel.DoublingUncertainty / pixel.Doubling;
        }
        else
            (activation, doubt) = laws.OfClass(pixel.Rate, slope);
        double growth = Math.Exp(activation * x),
            relative = pixel.Uncertainty / pixel.Rate,
            bent = x * doubt;
        double lit = pixel.Glow > 0 ? Math.Min(pixel.Glow, pixel.Rate) : 0,
            electrons = growth * (pixel.Rate * seconds + lit * (glowSeconds - seconds));
        double shared = own ? 2 * laws.LawCorrelation * relative * bent : 0;
        double variance =
            electrons
            * electrons
            * Math.Max(relative * relative + bent * bent + shared, 0.1 * (relative * relative + bent * bent));
        return (electrons, variance);
    }
}
