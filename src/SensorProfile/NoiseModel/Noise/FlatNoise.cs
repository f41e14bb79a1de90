namespace SensorProfile.NoiseModel.Noise;

/// <summary>What the master flat adds to a stack: its noise multiplies the light that is left after the dark.</summary>
/// <remarks>
/// A calibrated light is (L − D)/f, f the master flat over its mean. Of n flats of F electrons, less a master of b dark
/// flats or bias frames, a pixel of f varies by σ_f² = ((F + E)/n + E/b)/F², E the variance of the electronics; r² is what
/// flats leave on flats however many they are. Each light of signal S then carries S·√(σ_f² + r²), the same in all lights at
/// one dither position: over k positions of M lights the stack's variance rises from c·V/M by g·S²(σ_f² + r²)/k, V the
/// variance of one light, c what rejection costs of what is new in each light, g of it where samples share their position
/// (1 without dithering). The dark current is in S² no more: the dark took it off.
/// </remarks>
/// <param name="Signal">S, e-.</param>
/// <param name="LightVariance">V, e-².</param>
/// <param name="Electronics">E, e-²: read noise and rounding of one flat, and of one dark flat.</param>
/// <param name="Pattern">r², relative.</param>
/// <param name="Stack">M, k and the rejection.</param>
internal readonly record struct FlatNoise(
    double Signal,
    double LightVariance,
    double Electronics,
    double Pattern,
    StackConditions Stack
)
{
    /// <summary>σ_f² of a master flat.</summary>
    /// <param name="electrons">F.</param>
    /// <param name="flats">n.</param>
    /// <param name="unlit">b; null for as many as flats.</param>
    internal double OfMaster(double electrons, double flats, int? unlit) =>
        ((electrons + Electronics) / flats + Electronics / (unlit ?? flats)) / (electrons * electrons);

    /// <summary>Rise of the stack's noise, as a share.</summary>
    internal double Loss(double electrons, double flats, int? unlit) =>
        Rise(OfMaster(electrons, flats, unlit) + Pattern);

    /// <summary>The part of that rise that no number of flats removes.</summary>
    internal double LossByPattern => Rise(Pattern);

    /// <summary>The smallest n that stays within a loss; null when none does.</summary>
    /// <param name="electrons">F.</param>
    /// <param name="unlit">b; null for as many as flats.</param>
    /// <param name="loss">p, above 0.</param>
    internal double? Smallest(double electrons, int? unlit, double loss)
    {
        double allowed = ((1 + loss) * (1 + loss) - 1) / PerVariance - Pattern,
            square = electrons * electrons,
            left = unlit is int b ? allowed - Electronics / b / square : allowed;
        if (!(left > 0))
            return null;
        double n = Math.Max(
            Math.Ceiling((electrons + (unlit is null ? 2 : 1) * Electronics) / (left * square) * (1 - 1e-12)),
            1
        );
        return double.IsFinite(n) ? n : null;
    }

    /// <summary>A gradient that is the same in all lights, in the noise of one pixel of the stack.</summary>
    /// <param name="share">Of the signal.</param>
    internal double InStackNoise(double share) => share * Signal / Math.Sqrt(Cost * LightVariance / Stack.Lights);

    private double Rise(double relativeVariance) => Math.Sqrt(1 + PerVariance * relativeVariance) - 1;

    /// <summary>g·S²·M/(c·V·k).</summary>
    private double PerVariance =>
        Stack.CostOfShared(Cost) * Signal * Signal * Stack.Lights / (Cost * LightVariance * Stack.DitherPositions);

    private double Cost =>
        Stack.Clips
            ? ClippedMean.Find(Stack.Lights, Stack.DitherPositions, Stack.RejectionSigma, Stack.Rejection).Cost
            : 1;
}
