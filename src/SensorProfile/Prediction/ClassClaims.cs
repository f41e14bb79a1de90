using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>
/// The uncertainty that may be claimed for each pixel of a computed dark, given what the trials showed of its class.
/// </summary>
internal sealed class ClassClaims
{
    private readonly PredictionClass[][] ofKind;
    private readonly double noise,
        typicalUncertainty;
    private readonly bool judged;

    /// <summary>Reads the claims of each class from the trial that applies.</summary>
    /// <param name="test">The trial that applies to the question; if it has no classes, noise and laws alone set the
    /// claim.</param>
    /// <param name="trials">All trials.</param>
    /// <param name="typicalSignal">Signal of the typical pixel in the computed dark, e-.</param>
    public ClassClaims(PredictionTest test, DarkPredictionProfile trials, double typicalSignal)
    {
        judged = test.Classes.Count > 0;
        ofKind =
        [
            .. Enumerable
                .Range(0, (int)PixelKind.Unknown)
                .Select(k => test.Classes.Where(c => c.Pixels == ClassJudge.Name((PixelKind)k)).ToArray()),
        ];
        noise = BrightnessClass.Noise(trials.UnlitNoise, typicalSignal);
        typicalUncertainty = trials.TypicalUncertainty;
    }

    /// <summary>
    /// The variance claimed, e-², not a number where nothing is claimed; and the class, if it is refused.
    /// </summary>
    /// <param name="pixel">The pixel.</param> <param name="flickers">Whether it flickers.</param>
    /// <param name="variance">Variance from noise and laws, e-².</param>
    /// <param name="signal">Computed signal above the typical pixel's, e-.</param>
    public (double Variance, PredictionClass? Refused) Claim(
        in PixelState pixel,
        bool flickers,
        double variance,
        double signal
    )
    {
        PixelKind kind = PixelKinds.Classify(pixel, flickers, typicalUncertainty);
        if (!judged || kind == PixelKind.Unknown)
            return (variance, null);
        double brightness = signal / noise;
        foreach (PredictionClass known in ofKind[(int)kind])
            if (
                kind != PixelKind.Hot
                || (known.FromNoise == 0 || brightness >= known.FromNoise)
                    && (known.ToNoise is not { } to || brightness < to)
            )
                return known.Refused is null
                    ? (new ClassDoubt(known.VarianceFactor, known.CommonShare).Widen(variance, signal), null)
                    : (double.NaN, known);
        return (double.NaN, new() { Pixels = ClassJudge.Name(kind), Refused = ClassRefusal.TooFew });
    }
}
