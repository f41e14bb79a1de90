namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// The noise of one light that a share of the pixels does not exceed, without and with the pixels that jump between
/// levels.
/// </summary>
/// <param name="Share">Share of the pixels, 0…1.</param>
/// <param name="Without">Noise from sky, dark current, read-out and masters, e-.</param>
/// <param name="With">The same with the flickering pixels, e-.</param>
internal sealed record FlickerAtRank(double Share, double Without, double With);
