namespace SensorProfile.FixedPattern.Cells;

/// <summary>
/// Sums of the signal above the typical pixel in every coarse cell, for every group of frames; outstanding pixels are
/// left out.
/// </summary>
/// <param name="Grid">The cells.</param>
/// <param name="Sums">Σ signal, e-: [temperature][group][cell].</param>
/// <param name="Counts">Number of pixels in the sums: [cell].</param>
internal sealed record CellSignals(CellGrid Grid, double[][][] Sums, long[] Counts);
