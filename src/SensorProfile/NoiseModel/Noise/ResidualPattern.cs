namespace SensorProfile.NoiseModel.Noise;

/// <summary>What darks leave behind over the pixels, as standard deviations, e-.</summary>
/// <param name="Within">Of pixels that glow alike: they differ from position to position of a dithered stack.</param>
/// <param name="Between">Of the parts of the sensor that glow differently: a dither does not leave them.</param>
internal readonly record struct ResidualPattern(double Within, double Between)
{
    /// <summary>Of all pixels, before dithering.</summary>
    internal double Spread => Math.Sqrt(Within * Within + Between * Between);

    /// <summary>Of the places of a stack dithered over some positions.</summary>
    internal double Dithered(int positions) => Math.Sqrt(Within * Within / positions + Between * Between);
}
