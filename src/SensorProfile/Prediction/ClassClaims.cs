using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>What may be claimed of every pixel of a computed dark, by what the trials showed of its class.</summary>
internal sealed class ClassClaims
{
    private readonly PredictionClass[][] ofKind;
    private readonly double noise,
        typicalUncertainty;
    private readonly bool judged;

    /// <summary>Prepares.</summary>
    /// <param name="test">The trial that speaks for the question; one without classes claims what noise and laws
    /// give.</param>
    /// <param name="trials">All of them.</param>
    /// <param name="typicalSignal">Of the computed dark, e-.</param>
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

    /// <summary>Variance claimed, e-²; not a number where nothing is claimed, and the class.</summary>
    /// <param name="pixel">The pixel.</param> <param name="flickers">Whether it flickers.</param>
    /// <param name="variance">That of noise and laws, e-².</param>
    /// <param name="signal">Computed signal above the typical pixel's, e-.</param>
    public (double Variance, PredictionClass? Refused) Claim(
        in PixelState pixel,
        bool flickers,
        double variance,
        double signal
    )
    {
        PixelKind kind = PixelKinds.Of(pixel, flickers, typicalUncertainty);
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
