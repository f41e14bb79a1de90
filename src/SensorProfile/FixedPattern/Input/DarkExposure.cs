using SensorProfile.Pixels.Strips;

namespace SensorProfile.FixedPattern.Input;

/// <summary>Dark frames of one exposure at one temperature.</summary>
/// <param name="Seconds">Exposure for the lines, s: of a set a little warmer than its temperature's mean that which
/// would have collected as much at the mean.</param>
/// <param name="Frames">At least one frame.</param>
internal sealed record DarkExposure(double Seconds, IReadOnlyList<IFrameSamples> Frames)
{
    /// <summary>Exposure as taken, s.</summary>
    public double TakenSeconds { get; init; } = Seconds;

    /// <summary>Reading of the probe in each frame, °C; empty when it is not to be judged.</summary>
    public IReadOnlyList<double?> Readings { get; init; } = [];

    /// <summary>Start of each frame on a clock common to all, s; empty when not known.</summary>
    public IReadOnlyList<double> StartSeconds { get; init; } = [];

    /// <summary>
    /// Level of each frame, ADU: [frame][channel]; empty when not known. What all pixels of a frame share is no flicker
    /// of one of them.
    /// </summary>
    public IReadOnlyList<double[]> FrameLevels { get; init; } = [];

    /// <summary>
    /// Relative scatter of a hot pixel's signal that temperature alone explains: the readings' scatter (0.1 °C at
    /// least, also where there are none) at a doubling of 6.5 °C.
    /// </summary>
    public double TemperatureScatter
    {
        get
        {
            double[] known = [.. Readings.OfType<double>()];
            double mean = known.Length == 0 ? 0 : known.Average(),
                squares = known.Sum(r => (r - mean) * (r - mean));
            double scatter = known.Length < 2 ? 0 : Math.Sqrt(squares / (known.Length - 1));
            return Math.Log(2) / 6.5 * Math.Max(0.1, scatter);
        }
    }
}
