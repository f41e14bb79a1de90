using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>The noise of the stack against which residuals are judged, in ADU.</summary>
/// <param name="Gain">e-/ADU; null when unknown.</param>
/// <param name="Options">Lights, sky, limits.</param>
internal sealed record StackRuler(Measurement? Gain, DarkLibraryOptions Options)
{
    /// <summary>
    /// Whether the gain is only a rough one from the fresh darks: good enough for the noise of the sky, but not to tell
    /// electrons from ADU.
    /// </summary>
    public bool GainIsRough { get; init; }

    /// <summary>e- or ADU.</summary>
    public string Unit => Gain is null ? "ADU" : "e-";

    /// <summary>Factor from ADU to <see cref="Unit"/>.</summary>
    public double PerAdu => Gain?.Value ?? 1;

    /// <summary>
    /// Variance of one light: dark and read noise as measured in the fresh darks, plus the sky, ADU²; a rough gain
    /// enters at its upper end, to be strict.
    /// </summary>
    public double LightVariance(double darkVariance, double? exposureSeconds) =>
        darkVariance
        + (
            Gain is { Value: > 0 } k && exposureSeconds is double t
                ? NamedSkies.OrDefault(Options.Sky).Rate.Value
                    * t
                    / Square(k.Value + (GainIsRough ? k.StandardUncertainty : 0))
                : 0
        );

    /// <summary>Standard deviation of the stack, ADU.</summary>
    public double StackNoise(double darkVariance, double? exposureSeconds) =>
        Math.Sqrt(LightVariance(darkVariance, exposureSeconds) / Options.Lights);

    /// <summary>Relative rise of the stack's noise from what all lights at one dither position share.</summary>
    /// <param name="extraVariance">Variance of the shared part over the pixels, ADU².</param>
    /// <param name="stack">Noise of the stack, ADU.</param>
    public double Loss(double extraVariance, double stack) =>
        Math.Sqrt(1 + Math.Max(0, extraVariance) / Options.Positions / (stack * stack)) - 1;

    /// <summary>Makes the visibility model of single pixels in a dithered stack; null without dithering.</summary>
    /// <param name="fresh">The fresh darks: a pixel's signal sets the shot noise of its samples.</param>
    public Func<double, DitheredPixels>? Dithered(FreshDarks fresh)
    {
        if (Options.Positions < 2)
            return null;
        double light = LightVariance(fresh.TemporalVariance, fresh.Set.ExposureSeconds),
            stack = StackNoise(fresh.TemporalVariance, fresh.Set.ExposureSeconds),
            level = RobustSpread.Median(fresh.Mean);
        ClippedMean? clip =
            Options.Rejection != Rejection.None
                ? ClippedMean.Find(Options.Lights, Options.Positions, Stack(fresh).RejectionSigma, Options.Rejection)
                : null;
        double Pixel(int i) => light + (Gain is { Value: > 0 } k ? Math.Max(0, fresh.Mean[i] - level) / k.Value : 0);
        return extra => new DitheredPixels(
            Options.Positions,
            Options.Limits.HotFactor * stack,
            light + Math.Max(0, extra),
            clip,
            Pixel
        );
    }

    /// <summary>
    /// Noise of a pixel in the fresh darks relative to an ordinary one, √(1 + S/(K·V)): S its signal above the typical
    /// pixel's, V the variance of one dark, K the gain (e⁻/ADU); 1 for all when the gain is unknown.
    /// </summary>
    public Func<int, double> OwnNoise(FreshDarks fresh)
    {
        if (Gain is not { Value: > 0 } k || !(fresh.TemporalVariance > 0))
            return _ => 1;
        double level = RobustSpread.Median(fresh.Mean);
        return i => Math.Sqrt(1 + Math.Max(0, fresh.Mean[i] - level) / (k.Value * fresh.TemporalVariance));
    }

    private StackConditions Stack(FreshDarks fresh) =>
        Options.At(fresh.Set.TemperatureCelsius ?? 0, NamedSkies.OrDefault(Options.Sky));

    /// <summary>Converts a quantity in ADU to the unit shown to the user.</summary>
    public Measurement Measured(double adu, double uncertainty, long samples, string method) =>
        new(adu * PerAdu, uncertainty * PerAdu, Unit, samples, method);

    private static double Square(double x) => x * x;
}
