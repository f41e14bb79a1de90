using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// A straight line against exposure through the means of a pixel, as fixed factors: slope = Σ factor·mean.
/// </summary>
/// <remarks>Least squares weighted by the number of frames: factor = n(t − t̄)/Σn(t − t̄)². The factors are the same
/// for all pixels and add up to 0, so whatever shifts a whole group of frames (a jumping pedestal, a clamp) shifts all
/// slopes alike and vanishes when the median slope is subtracted.</remarks>
/// <param name="Seconds">Exposure of each group, s; the unlit frames, if used, are last with 0.</param>
/// <param name="Factors">1/s.</param>
/// <param name="Centre">t̄, s.</param>
internal sealed record ExposureSlope(IReadOnlyList<double> Seconds, IReadOnlyList<double> Factors, double Centre)
{
    /// <summary>
    /// Below this ratio of longest to shortest exposure, the darks alone have a poor lever arm, and the unlit frames
    /// are used as zero exposure.
    /// </summary>
    private const double GoodLever = 4;

    /// <summary>Number of groups of dark frames (the unlit map not counted).</summary>
    public int DarkGroups { get; private init; }

    /// <summary>Whether the unlit map is used.</summary>
    public bool UsesUnlit => Factors.Count > DarkGroups;

    /// <summary>Makes the line for one temperature; null when its exposures do not allow one.</summary>
    /// <param name="exposures">The darks of that temperature.</param>
    /// <param name="unlitFrames">Frames behind the unlit map; 0 for none.</param>
    public static ExposureSlope? Prepare(IReadOnlyList<DarkExposure> exposures, int unlitFrames)
    {
        List<double> seconds = [.. exposures.Select(e => e.Seconds)],
            counts = [.. exposures.Select(e => (double)e.Frames.Count)];
        if (exposures.Count == 0)
            return null;
        bool poor = seconds.Distinct().Count() < 3 || seconds.Max() < GoodLever * seconds.Min();
        if (poor && unlitFrames > 0)
        {
            seconds.Add(0);
            counts.Add(unlitFrames);
        }
        if (seconds.Distinct().Count() < 2)
            return null;
        double weight = counts.Sum(),
            centre = seconds.Zip(counts, (t, n) => t * n).Sum() / weight;
        double spread = seconds.Zip(counts, (t, n) => n * (t - centre) * (t - centre)).Sum();
        return new(seconds, [.. seconds.Zip(counts, (t, n) => n * (t - centre) / spread)], centre)
        {
            DarkGroups = exposures.Count,
        };
    }
}
