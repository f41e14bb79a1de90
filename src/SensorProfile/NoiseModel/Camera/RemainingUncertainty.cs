namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// How much of each uncertainty is left when more frames are added, as a share: 1 as the profile states it, 0 none.
/// </summary>
/// <param name="Bias">Of what bias frames tell: the read noise.</param>
/// <param name="Flats">Of what flats tell: the gain.</param>
/// <param name="Darks">Of what darks tell: the dark current with its law, the rates and laws of the pixels, the glow.
/// The number of hot pixels on the sensor stays as uncertain as its counting.</param>
/// <param name="Lights">Of what lights tell: the sky.</param>
internal readonly record struct RemainingUncertainty(double Bias, double Flats, double Darks, double Lights)
{
    internal static RemainingUncertainty Whole { get; } = new(1, 1, 1, 1);
}
