using SensorProfile.Pixels;

namespace SensorProfile.Prediction;

/// <summary>Uncertainty of a pixel's level without exposure, from the mean of its bias frames.</summary>
/// <remarks>
/// The pixel's own variance, from n − 1 degrees of freedom, is shrunk towards the typical pixel's, which counts for 16:
/// few frames alone would make every second pixel claim too small an uncertainty. With fewer than 8 frames the typical
/// one serves for all; a pixel that scatters far more keeps its own.
/// </remarks>
/// <param name="Frames">Bias frames.</param>
/// <param name="Width">Frame width, px.</param>
/// <param name="CodeStep">ADU between two usable codes.</param>
/// <param name="ReadNoiseAdu">Read noise of the typical pixel, quantisation removed, ADU.</param>
internal sealed record PedestalDoubt(int Frames, int Width, int CodeStep, double ReadNoiseAdu)
{
    private const double Prior = 16;
    private const int MinFrames = 8;

    /// <summary>
    /// A variance this many times the typical one is not chance: the pixel jumps between levels. (8 frames: 0.3 % of
    /// sound pixels; 16 frames: 0.01 %.)
    /// </summary>
    private const double Jumps = 3;

    /// <summary>Variance of the mean of one pixel, ADU².</summary>
    /// <param name="own">Temporal variance of the pixel over the bias frames, ADU²; not a number when it is not
    /// known.</param>
    /// <param name="typical">Temporal variance of the typical pixel, ADU².</param>
    /// <param name="frames">Bias frames.</param>
    public static double Variance(double own, double typical, int frames)
    {
        if (frames < MinFrames || double.IsNaN(own))
            return typical / frames;
        if (own > Jumps * typical)
            return own / frames;
        return (Prior * typical + (frames - 1) * own) / (Prior + frames - 1) / frames;
    }

    /// <summary>The map of standard uncertainties, ADU.</summary>
    /// <param name="pixels">Pixels in a frame.</param>
    /// <param name="noise">Read noise of every pixel, e-; null when it was not measured.</param>
    /// <param name="mosaic">Which pixels share a channel.</param> <param name="gains">e-/ADU of each channel.</param>
    public float[] Map(int pixels, Half[]? noise, ColourMosaic mosaic, IReadOnlyList<double> gains)
    {
        double quantisation = CodeStep * CodeStep / 12.0,
            typical = ReadNoiseAdu * ReadNoiseAdu + quantisation;
        var map = new float[pixels];
        for (int i = 0; i < map.Length; i++)
        {
            double own = noise is null
                ? double.NaN
                : Math.Pow((double)noise[i] / gains[mosaic.Channel(i / Width, i % Width)], 2) + quantisation;
            map[i] = (float)Math.Sqrt(Variance(own, typical, Frames));
        }
        return map;
    }
}
