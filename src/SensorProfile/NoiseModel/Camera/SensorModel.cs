using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// One mode of a profile as the decisions read it: noise, dark law, pixels and glow; or one random draw of it.
/// </summary>
internal sealed class SensorModel
{
    private double thermalAtReference = double.NaN;

    /// <summary>R², e-²; quantisation is separate.</summary>
    internal required double ReadVariance { get; init; }

    /// <summary>(step·gain)²/12, e-²; 0 when the gain is unknown.</summary>
    internal required double QuantisationVariance { get; init; }

    /// <summary>Conversion gain, e-/ADU; 0 when unknown.</summary>
    internal required double Gain { get; init; }

    /// <summary>Law of the typical pixel.</summary>
    internal required TypicalLaw Law { get; init; }

    /// <summary>Temperature of the per-pixel rates, °C.</summary>
    internal required double PixelReference { get; init; }

    /// <summary>All pixels, or null when the profile has no distribution; computed on first use.</summary>
    internal PixelPopulation? Pixels =>
        pixels ??= Rates is null ? null : PixelPopulation.Of(Rates, HotAbove, Laws, GlowParts);

    private PixelPopulation? pixels;

    /// <summary>The distribution behind <see cref="Pixels"/>.</summary>
    internal required RateDistribution? Rates { get; init; }

    /// <summary>Laws of the pixels that are faster than the typical one.</summary>
    internal required PixelLaws Laws { get; init; }

    /// <summary>Rate above which a pixel is hot, e-/px/s at <see cref="PixelReference"/>.</summary>
    internal required double HotAbove { get; init; }

    /// <summary>Strongest glow, or null when none was found.</summary>
    internal required GlowSource? Glow { get; init; }

    /// <summary>How the laws of hot pixels bend away from the typical one; null where they do not.</summary>
    internal HotLawBend? Bend { get; init; }

    /// <summary>How strongly parts of the sensor glow; null where nothing does.</summary>
    internal GlowParts? GlowParts { get; init; }

    /// <summary>
    /// Pixels that jump between levels; empty when none were found or the profile does not hold their steps.
    /// </summary>
    internal required IReadOnlyList<FlickerClass> Flicker { get; init; }

    /// <summary>Pixels of the sensor.</summary>
    internal required double PixelCount { get; init; }

    /// <summary>Charge at which a pixel is full or reaches the top code, e-; infinite when not measured.</summary>
    internal required double FullWell { get; init; }

    /// <summary>
    /// Share of the pixels that sky and dark current fill within an exposure, so that their light is lost; 0 without a
    /// distribution.
    /// </summary>
    internal double ShareFull(double sky, double exposureSeconds, double celsius)
    {
        if (Pixels is null)
            return 0;
        double[] rates = Pixels.RatesAt(GrowthAt(celsius, exposureSeconds));
        double share = 0;
        for (int i = 0; i < rates.Length; i++)
            if ((sky + rates[i]) * exposureSeconds >= FullWell)
                share += Pixels.Weights[i];
        return share;
    }

    /// <summary>Effect of a temperature on the dark rates of the pixels, over an exposure.</summary>
    internal RateFactors GrowthAt(double celsius, double exposureSeconds)
    {
        if (double.IsNaN(thermalAtReference))
            thermalAtReference = Law.ThermalAt(PixelReference); // the same from every thread
        double thermal = Law.ThermalAt(celsius) / thermalAtReference;
        return new(thermal, Law.Floor, Glow?.Factor(celsius, exposureSeconds, this) ?? 0)
        {
            Own = Bend is null ? thermal : Math.Exp(Bend.At(Math.Log(thermal))),
        };
    }

    /// <summary>
    /// Mean dark rate over an exposure that a share of the pixels does not exceed, e-/px/s; null without a distribution.
    /// </summary>
    internal double? RateOfRank(double share, double celsius, double exposureSeconds) =>
        Pixels?.RateOfRank(share, GrowthAt(celsius, exposureSeconds));

    /// <summary>
    /// Share of the pixels whose mean dark rate exceeds a given one, e-/px/s; null without a distribution.
    /// </summary>
    internal double? ShareAbove(double rate, double celsius, double exposureSeconds) =>
        Pixels?.ShareAbove(rate, GrowthAt(celsius, exposureSeconds));
}
