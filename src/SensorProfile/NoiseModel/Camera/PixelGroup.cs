namespace SensorProfile.NoiseModel.Camera;

/// <summary>The pixel classes of a part of the sensor with uniform glow.</summary>
/// <param name="First">Index of its first class.</param>
/// <param name="Count">Number of its classes.</param>
/// <param name="Share">Share of all pixels, 0…1.</param>
/// <param name="Glow">Its glow, e-/px/s at the reference temperature.</param>
/// <param name="LowerQuartile">Class that a quarter of its pixels do not exceed.</param>
/// <param name="Middle">Class of its median pixel.</param>
/// <param name="UpperQuartile">Class that three quarters of its pixels do not exceed.</param>
internal readonly record struct PixelGroup(
    int First,
    int Count,
    double Share,
    double Glow,
    int LowerQuartile,
    int Middle,
    int UpperQuartile
)
{
    /// <summary>A group of classes.</summary>
    /// <param name="weights">Their shares of all pixels, slowest first.</param>
    /// <param name="first">Index of the first.</param>
    /// <param name="share">Share of the group.</param>
    /// <param name="glow">Its glow, e-/px/s at the reference temperature.</param>
    internal static PixelGroup Of(ReadOnlySpan<double> weights, int first, double share, double glow) =>
        new(
            first,
            weights.Length,
            share,
            glow,
            first + PlaceOf(0.25 * share, weights),
            first + PlaceOf(0.5 * share, weights),
            first + PlaceOf(0.75 * share, weights)
        );

    private static int PlaceOf(double rank, ReadOnlySpan<double> weights)
    {
        double below = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            below += weights[i];
            if (below >= rank)
                return i;
        }
        return weights.Length - 1;
    }
}
