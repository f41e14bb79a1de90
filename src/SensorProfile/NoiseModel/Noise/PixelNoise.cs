using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// The variances of one pixel of one calibrated light, e-²: the one noise function behind every decision.
/// </summary>
/// <param name="Sky">S·t.</param>
/// <param name="Dark">I·t.</param>
/// <param name="Glow">G·t.</param>
/// <param name="Read">R².</param>
/// <param name="Quantisation">(step·gain)²/12.</param>
/// <param name="MasterDark">s²·(I_d·t_d + G_d·t_d + R² + q²)/n.</param>
/// <param name="MasterBias">(1 − s)²·(R² + q²)/n_bias; 0 for darks that are not scaled, because the bias
/// cancels.</param>
internal readonly record struct PixelNoise(
    double Sky,
    double Dark,
    double Glow,
    double Read,
    double Quantisation,
    double MasterDark,
    double MasterBias
)
{
    /// <summary>Variance that is new in every light, e-².</summary>
    internal double Random => Sky + Dark + Glow + Read + Quantisation;

    /// <summary>Variance that every light of the stack shares, sensor pixel by sensor pixel, e-².</summary>
    internal double Common => MasterDark + MasterBias;

    /// <summary>
    /// Variance of the mean of M calibrated lights over k dither positions, e-²: the masters' noise only falls with k;
    /// rejection costs some of what is new in each light (<see cref="ClippedMean.Cost"/>).
    /// </summary>
    internal double Stack(StackConditions stack) =>
        (
            stack.Clips
                ? ClippedMean.Find(stack.Lights, stack.DitherPositions, stack.RejectionSigma, stack.Rejection).Cost
                : 1
        )
            * Random
            / stack.Lights
        + Common / stack.DitherPositions;

    /// <summary>The variances without masters.</summary>
    internal static PixelNoise OfLight(
        SensorModel sensor,
        double skyElectrons,
        double darkElectrons,
        double glowElectrons = 0
    ) => new(skyElectrons, darkElectrons, glowElectrons, sensor.ReadVariance, sensor.QuantisationVariance, 0, 0);

    /// <summary>The variances with the masters of <paramref name="darks"/>.</summary>
    /// <param name="sensor">The camera.</param>
    /// <param name="skyElectrons">S·t.</param>
    /// <param name="darkElectrons">I·t of this pixel in the light.</param>
    /// <param name="darkElectronsInDark">I_d·t_d of this pixel in one dark, glow included.</param>
    /// <param name="darks">The darks.</param>
    /// <param name="scale">s; 1 when not scaled.</param>
    internal static PixelNoise Calibrated(
        SensorModel sensor,
        double skyElectrons,
        double darkElectrons,
        double darkElectronsInDark,
        DarkFrames darks,
        double scale
    )
    {
        double electronics = sensor.ReadVariance + sensor.QuantisationVariance;
        return OfLight(sensor, skyElectrons, darkElectrons) with
        {
            MasterDark = scale * scale * (darkElectronsInDark + electronics) / darks.Frames,
            MasterBias = scale == 1 ? 0 : (1 - scale) * (1 - scale) * electronics / Math.Max(darks.BiasFrames, 1),
        };
    }
}
