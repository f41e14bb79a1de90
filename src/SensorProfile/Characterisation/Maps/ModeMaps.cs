using SensorProfile.FixedPattern.Telegraph;

namespace SensorProfile.Characterisation.Maps;

/// <summary>
/// Maps of the frame's own size, row after row, not a number where not measured. Null when there was nothing to make
/// them from.
/// </summary>
internal sealed record ModeMaps
{
    /// <summary>Width, px.</summary>
    public int Width { get; init; }

    /// <summary>Height, px.</summary>
    public int Height { get; init; }

    /// <summary>
    /// Temporal standard deviation of every pixel without light, e-, to three digits; computed anew at every call.
    /// </summary>
    public float[]? ReadNoiseMap() => Widened(ReadNoise);

    /// <summary>
    /// What <see cref="ReadNoiseMap"/> is made from; half-precision numbers, for a map of a large camera fills much memory.
    /// </summary>
    internal Half[]? ReadNoise { get; init; }

    /// <summary>Dark rate at the reference temperature, glow included, e-/px/s.</summary>
    public float[]? DarkRate { get; init; }

    /// <summary>Standard uncertainty of the dark rate, e-/px/s.</summary>
    public float[]? DarkRateUncertainty { get; init; }

    /// <summary>
    /// Dark rate at the reference temperature where no gain is known, ADU/px/s; null where <see cref="DarkRate"/> is
    /// given.
    /// </summary>
    public float[]? DarkRateAdu { get; init; }

    /// <summary>
    /// Glow at the reference temperature, e-/px/s, 0 where nothing glows; computed anew at every call.
    /// </summary>
    public float[]? GlowMap() => Glow?.Invoke();

    /// <summary>Makes the map of the glow when it is written.</summary>
    internal Func<float[]>? Glow { get; init; }

    /// <summary>
    /// Doubling temperature of each pixel whose law could be measured, °C, to three digits; computed anew at every
    /// call.
    /// </summary>
    public float[]? DoublingMap() => Widened(Doubling);

    /// <summary>What <see cref="DoublingMap"/> is made from.</summary>
    internal Half[]? Doubling { get; init; }

    /// <summary>Mean of every pixel without light and exposure, ADU.</summary>
    public float[]? Pedestal { get; init; }

    /// <summary>
    /// Standard uncertainty of <see cref="Pedestal"/>, ADU, computed when it is written; null where that is.
    /// </summary>
    internal Func<float[]>? PedestalUncertainty { get; init; }

    /// <summary>
    /// Standard uncertainty of the doubling temperatures of pixels that stand out, °C, computed when it is written.
    /// </summary>
    internal Func<float[]>? DoublingUncertainty { get; init; }

    /// <summary>Defect classes; 0 for a good pixel.</summary>
    public byte[]? Defects { get; init; }

    /// <summary>Levels of the pixels that jump between levels, by index; empty when none was found.</summary>
    internal IReadOnlyDictionary<int, TelegraphFit> Levels { get; init; } = new Dictionary<int, TelegraphFit>();

    private static float[]? Widened(Half[]? map) => map is null ? null : Array.ConvertAll(map, value => (float)value);
}
