using MathNet.Numerics;

namespace SensorProfile.Pixels.Sums;

/// <summary>What a clip at ±c standard deviations does to a normal sample.</summary>
internal static class GaussianClip
{
    /// <summary>Share of a normal sample beyond ±c·σ: 2(1 − Φ(c)).</summary>
    public static double ExcludedFraction(double c) => SpecialFunctions.Erfc(c / Constants.Sqrt2);

    /// <summary>Variance left within ±c·σ over the whole variance: 1 − 2cφ(c)/(2Φ(c) − 1).</summary>
    public static double VarianceLeft(double c)
    {
        double density = Math.Exp(-c * c / 2) / Constants.Sqrt2Pi;
        return 1 - 2 * c * density / (1 - ExcludedFraction(c));
    }
}
