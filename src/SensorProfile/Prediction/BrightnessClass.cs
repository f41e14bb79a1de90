namespace SensorProfile.Prediction;

/// <summary>
/// Classes in which computed darks are judged and their uncertainty is claimed: kinds of pixels, hot ones by decades of
/// brightness.
/// </summary>
/// <remarks>
/// Brightness is the computed signal above the typical pixel's, divided by the noise of an ordinary pixel in one such
/// frame, √(R² + typical signal): noise dominates the error of a faint pixel, the law that of a bright one.
/// </remarks>
internal static class BrightnessClass
{
    /// <summary>Upper ends of the classes of hot pixels, in units of the noise of an ordinary pixel.</summary>
    public static readonly double[] Edges = [10, 100, 1000];

    private const int Typical = 0,
        Glow = 1,
        Flickering = 2,
        FirstHot = 3;

    /// <summary>Number of classes.</summary>
    public static int Count => FirstHot + Edges.Length + 1;

    /// <summary>Classes of the hot pixels, the faintest first.</summary>
    public static IEnumerable<int> Hot => Enumerable.Range(FirstHot, Edges.Length + 1);

    /// <summary>The class of a pixel that is not <see cref="PixelKind.Unknown"/>.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="brightness">In units of the noise of an ordinary pixel.</param>
    public static int Classify(PixelKind kind, double brightness) =>
        kind switch
        {
            PixelKind.Typical => Typical,
            PixelKind.Glow => Glow,
            PixelKind.Flickering => Flickering,
            _ => FirstHot + Edges.Count(e => brightness >= e),
        };

    /// <summary>The classes of a kind.</summary>
    public static IEnumerable<int> OfKind(PixelKind kind) => kind == PixelKind.Hot ? Hot : [Classify(kind, 0)];

    /// <summary>Brightness at which a class of hot pixels begins.</summary>
    public static double From(int hotClass) => hotClass == FirstHot ? 0 : Edges[hotClass - FirstHot - 1];

    /// <summary>Brightness at which it ends; null for the brightest.</summary>
    public static double? To(int hotClass) => hotClass - FirstHot < Edges.Length ? Edges[hotClass - FirstHot] : null;

    /// <summary>Noise of an ordinary pixel in one frame, e-.</summary>
    /// <param name="unlitNoise">Noise without exposure, e-.</param>
    /// <param name="typicalSignal">Signal of the typical pixel, e-.</param>
    public static double Noise(double unlitNoise, double typicalSignal) =>
        Math.Sqrt(unlitNoise * unlitNoise + Math.Max(0, typicalSignal));
}
