using SensorProfile.Pixels.Strips;

namespace SensorProfile.FixedPattern.Input;

/// <summary>Dark frames of one exposure at one temperature.</summary>
/// <param name="Seconds">Exposure for the lines, s; for a set slightly warmer than the mean of its temperature, the
/// exposure that would collect the same signal at the mean.</param>
/// <param name="Frames">At least one frame.</param>
internal sealed record DarkExposure(double Seconds, IReadOnlyList<IFrameSamples> Frames)
{
    /// <summary>Exposure as taken, s.</summary>
    public double TakenSeconds { get; init; } = Seconds;

    /// <summary>Probe reading of each frame, °C; empty if it is not to be tested.</summary>
    public IReadOnlyList<double?> Readings { get; init; } = [];

    /// <summary>Start of each frame on a common clock, s; empty when unknown.</summary>
    public IReadOnlyList<double> StartSeconds { get; init; } = [];

    /// <summary>
    /// Level of each frame, ADU: [frame][channel]; empty when unknown. What all pixels of a frame share is not flicker
    /// of a single pixel.
    /// </summary>
    public IReadOnlyList<double[]> FrameLevels { get; init; } = [];

    /// <summary>
    /// Relative scatter of the signal of a hot pixel that temperature alone explains: the scatter of the readings (at
    /// least 0.1 °C, also without readings) at a doubling temperature of 6.5 °C.
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
