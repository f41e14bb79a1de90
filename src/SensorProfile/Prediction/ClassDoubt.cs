namespace SensorProfile.Prediction;

/// <summary>How much the uncertainty of a class of pixels is widened, as left-out darks showed.</summary>
/// <param name="Factor">Factor on the variance that noise and laws give each pixel.</param>
/// <param name="Common">Error that all pixels of the class share, as a share of their signal above the typical
/// one.</param>
internal readonly record struct ClassDoubt(double Factor, double Common)
{
    /// <summary>No widening.</summary>
    public static ClassDoubt None => new(1, 0);

    /// <summary>The variance claimed, e-²: f·V + (c·S)².</summary>
    /// <param name="variance">V, e-².</param> <param name="signal">S, e-.</param>
    public double Widen(double variance, double signal) => Factor * variance + Common * signal * (Common * signal);
}
