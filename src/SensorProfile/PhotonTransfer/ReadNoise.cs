namespace SensorProfile.PhotonTransfer;

/// <summary>Read noise from the pooled variance of bias pairs.</summary>
internal static class ReadNoise
{
    /// <summary>
    /// Below this variance, in squared code steps, rounding dominates what is measured (EMVA Standard 1288, Release 4.0
    /// Linear: 0.24 DN²).
    /// </summary>
    public const double SmallestVarianceSteps = 0.24;

    /// <summary>σ = √(σ²_pairs − step²/12) in ADU: read noise without the quantisation of the converter.</summary>
    /// <remarks>
    /// The variance of a rounded normal variable depends on where its mean lies between two codes; the leading term of
    /// its characteristic function gives
    /// ±e^(−2π²σ²)(4σ² + 1/π²) step², σ in steps. Its root mean square over all positions enters the uncertainty
    /// (derivation; agrees with EMVA 1288's 0.24 DN² case).
    /// </remarks>
    /// <param name="pooled">Pooled variance, ADU².</param>
    /// <param name="codeStep">ADU between two usable codes.</param>
    /// <param name="pixels">Pixels of one frame behind the pooled variance.</param>
    /// <returns>Null below the smallest usable variance.</returns>
    public static Measurement? Adu(PooledVariance pooled, int codeStep, long pixels)
    {
        double steps = pooled.Value / ((double)codeStep * codeStep);
        if (steps < SmallestVarianceSteps)
            return null;
        double native = steps - 1.0 / 12;
        double rounding = RoundingAmplitude(native) / Math.Sqrt(2);
        double uncertainty = Math.Sqrt(
            Math.Pow(pooled.StandardUncertainty / (codeStep * codeStep), 2) + rounding * rounding
        );
        double sigma = Math.Sqrt(native);
        return new(
            sigma * codeStep,
            uncertainty / (2 * sigma) * codeStep,
            "ADU",
            pooled.Pairs * pixels,
            "bias pairs, 5 sigma clip, quantisation removed (EMVA 1288)"
        );
    }

    /// <summary>
    /// Error that rounding to codes may cause in the level of a frame, ADU: a standard uncertainty shared by all frames
    /// of the same level, because rounding shifts them all alike.
    /// </summary>
    /// <remarks>The leading term of the characteristic function of a normal variable rounded to whole steps moves its
    /// mean by e^(−2π²σ²)/π·sin(2πμ), σ and μ in steps; its root mean square over all μ is taken (derivation): 0.010
    /// steps at σ = 0.4, 0.0016 at 0.5, nothing beyond. Rounding shifts the observed variance too, so the lowest true
    /// variance it allows is used.</remarks>
    /// <param name="variance">Temporal variance of the pixels of the frame, ADU².</param>
    /// <param name="codeStep">ADU between two usable codes.</param>
    public static double LevelDoubtAdu(double variance, int codeStep)
    {
        double native = Math.Max(0, variance / ((double)codeStep * codeStep) - 1.0 / 12),
            least = Math.Max(0, native - SwingAt(native));
        return codeStep * Math.Exp(-2 * Math.PI * Math.PI * least) / (Math.PI * Math.Sqrt(2));
    }

    // The observed variance may be at the high end of the swing, so the amplitude is taken at the true variance that
    // would imply.
    private static double RoundingAmplitude(double native)
    {
        double amplitude = 0;
        for (int i = 0; i < 10; i++)
            amplitude = SwingAt(Math.Max(0.05, native - amplitude));
        return amplitude;
    }

    // Amplitude of the observed variance around the true one, squared steps.
    private static double SwingAt(double variance) =>
        Math.Exp(-2 * Math.PI * Math.PI * variance) * (4 * variance + 1 / (Math.PI * Math.PI));

    /// <summary>Read noise that cannot be told from rounding is below this, ADU.</summary>
    public static double UpperLimitAdu(int codeStep) => Math.Sqrt(SmallestVarianceSteps - 1.0 / 12) * codeStep;
}
