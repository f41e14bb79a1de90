using SensorProfile.Profiles;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// What the numbers of a camera in electrons have in common: they were all turned from ADU by one gain, so a gain that is
/// off takes them along.
/// </summary>
/// <remarks>
/// With relative uncertainties r: a quantity q = gain × (a number in ADU) has r_q² = r_gain² + r_ADU², and correlates with the
/// gain by ρ = r_gain/r_q (GUM 5.2). Noise ratios feel it: a gain 1 % high raises the noise of electronics and dark current
/// by 1 % at once, against a sky that stays.
/// </remarks>
/// <param name="WithReadNoise">Correlation of the gain with the read noise in electrons, 0…1.</param>
/// <param name="WithDarkCurrent">Correlation of the gain with the typical dark rate, 0…1; 0 for a dark current that was carried over
/// from another gain setting.</param>
internal readonly record struct SharedGain(double WithReadNoise, double WithDarkCurrent)
{
    /// <summary>The correlations of a mode; 0 without a gain.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="ofLaw">Relative uncertainty of the typical rate at the reference temperature.</param>
    internal static SharedGain Find(ModeProfile mode, double ofLaw)
    {
        double gain = Relative(mode.Gain);
        return new(
            Correlation(gain, Relative(mode.ReadNoise)),
            mode.DarkCurrent?.CarriedFrom is null ? Correlation(gain, ofLaw) : 0
        );
    }

    /// <summary>
    /// Standard normal deviates of the gain and of the read noise, given those of the dark current's law and two of their
    /// own.
    /// </summary>
    internal (double Gain, double ReadNoise) Deviates(double ofLaw, double ownGain, double ownReadNoise)
    {
        double gain = Joined(WithDarkCurrent, ofLaw, ownGain);
        return (gain, Joined(WithReadNoise, gain, ownReadNoise));
    }

    private static double Joined(double correlation, double shared, double own) =>
        correlation * shared + Math.Sqrt(1 - correlation * correlation) * own;

    private static double Correlation(double shared, double whole) => whole > 0 ? Math.Min(shared / whole, 1) : 0;

    private static double Relative(Measurement? quantity) =>
        quantity is { Value: > 0 } ? quantity.StandardUncertainty / quantity.Value : 0;
}
