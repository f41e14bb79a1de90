namespace SensorProfile.Simulation.Truth;

/// <summary>
/// Truth maps beside <c>truth.json</c>: FITS images of the frame's size. Their names do not end in .fits, so that no
/// program mistakes them for frames.
/// </summary>
internal sealed record TrueMapFiles
{
    /// <summary>Expected dark rate at the reference temperature of the die, e-/px/s, float32.</summary>
    public string DarkRate { get; init; } = "truth/dark-rate.truth";

    /// <summary>
    /// Doubling temperature of each pixel's rate at the reference temperature, °C, float32; NaN where the rate does not
    /// rise with temperature.
    /// </summary>
    public string Doubling { get; init; } = "truth/doubling.truth";

    /// <summary>Glow at the reference temperature, e-/px/s, float32.</summary>
    public string Glow { get; init; } = "truth/glow.truth";

    /// <summary>Read noise, e-, float32.</summary>
    public string ReadNoise { get; init; } = "truth/read-noise.truth";

    /// <summary>Bias level, ADU, float32.</summary>
    public string BiasLevel { get; init; } = "truth/bias-level.truth";

    /// <summary>
    /// Response to light relative to a good pixel at the centre, including vignetting and colour, float32.
    /// </summary>
    public string Response { get; init; } = "truth/response.truth";

    /// <summary>
    /// Defect classes, uint8, sum of: 1 hot, 2 telegraph, 4 dead, 8 bad column, 16 bad row, 32 cold, 64 in a cluster.
    /// </summary>
    public string Defects { get; init; } = "truth/defects.truth";
}
