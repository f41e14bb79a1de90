namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// Share of each uncertainty that remains when more frames are added: 1 as the profile states it, 0 for none.
/// </summary>
/// <param name="Bias">For what bias frames measure: the read noise.</param>
/// <param name="Flats">For what flats measure: the gain.</param>
/// <param name="Darks">For what darks measure: the dark current with its law, the rates and laws of the pixels, the
/// glow. The number of hot pixels on the sensor stays as uncertain as its counting.</param>
/// <param name="Lights">For what lights measure: the sky.</param>
internal readonly record struct RemainingUncertainty(double Bias, double Flats, double Darks, double Lights)
{
    internal static RemainingUncertainty Whole { get; } = new(1, 1, 1, 1);
}
