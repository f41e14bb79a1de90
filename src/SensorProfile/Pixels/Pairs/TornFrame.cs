using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// A torn frame: from some row on, its level is that of another exposure, because the readout was interrupted.
/// </summary>
/// <remarks>For bias and dark frames only: under light, row flicker looks the same. The row profile of the frame minus
/// the median profile of its set is split in two where the two parts differ most. The frame counts as torn only when
/// the jump happens between two rows (a gradient or glow spreads over many), lasts (a particle track ends after some
/// rows), stands far above the row noise and all other variation in either part, and is in the frame itself rather than
/// in the reference (when half a set is torn, the good half differs from the median too). A level that jumps as a whole
/// leaves no split. When more than half of a set is torn at the same row, the tear passes for fixed pattern and is not
/// found.</remarks>
/// <param name="FirstRow">First row with the other level, 0-based in the file.</param>
/// <param name="Step">Change of the level there, in the frame itself, ADU.</param>
/// <param name="Significance">The jump relative to the set, over its standard error.</param>
internal sealed record TornFrame(int FirstRow, double Step, double Significance)
{
    private const int Window = 16; // rows on either side from which the jump is measured
    private const int MinRows = 4; // a part with fewer rows is not judged
    private const double MinSignificance = 10;

    // of the jump: the bright rows of a particle track end after a few
    private const double LastingShare = 0.4;

    /// <summary>Compares every frame of a set with the median profile of the set; null for an intact frame.</summary>
    /// <param name="profiles">Row means of the frames (<see cref="FrameStatistics.RowMeans"/>), ADU, all of one
    /// length.</param>
    public static IReadOnlyList<TornFrame?> FindAll(IReadOnlyList<double[]> profiles)
    {
        if (profiles.Count < 2)
            return [.. profiles.Select(_ => (TornFrame?)null)];
        double[] reference =
        [
            .. Enumerable
                .Range(0, profiles[0].Length)
                .Select(row => OrderStatistics.Median([.. profiles.Select(profile => profile[row])])),
        ];
        return [.. profiles.Select(profile => Find(profile, reference))];
    }

    /// <summary>Compares one frame with a reference profile; null when it is intact.</summary>
    /// <param name="profile">Row means of the frame, ADU.</param>
    /// <param name="reference">Row means of an intact frame of its set, up to a constant, ADU.</param>
    public static TornFrame? Find(double[] profile, double[] reference)
    {
        if (profile.Length != reference.Length)
            throw new ArgumentException(
                $"A profile of {profile.Length} rows cannot be compared with one of {reference.Length}.",
                nameof(reference)
            );
        if (profile.Length < 2 * MinRows)
            return null;
        double[] relative = [.. profile.Zip(reference, (own, usual) => own - usual)];
        int row = Split(relative);
        int window = Math.Min(Window, Math.Min(row, profile.Length - row));
        double jump = Jump(relative, row, window),
            own = Jump(profile, row, window),
            usual = Jump(reference, row, window);
        double above = OrderStatistics.Median(relative.AsSpan(0, row)),
            below = OrderStatistics.Median(relative.AsSpan(row));
        double significance = Math.Abs(jump) / Math.Max(double.Epsilon, RowNoise(relative) * MedianError(window));
        double lasting = Math.CopySign(1, jump) * (below - above);
        bool sudden = Math.Abs(jump) >= 0.6 * Math.Abs(lasting) && lasting >= LastingShare * Math.Abs(jump);
        bool steady = Math.Abs(jump) > 3 * Math.Max(Scatter(relative[..row], above), Scatter(relative[row..], below));
        bool itsOwn = own * jump > 0 && Math.Abs(own) > Math.Abs(usual) && Math.Abs(own) >= 0.5 * Math.Abs(jump);
        return sudden && steady && itsOwn && significance > MinSignificance
            ? new TornFrame(row, own, significance)
            : null;
    }

    /// <summary>First row of the second part, where |difference of the means|·√(n₁n₂) is greatest.</summary>
    private static int Split(double[] values)
    {
        double total = values.Sum(),
            sum = 0,
            best = -1;
        int split = MinRows;
        for (int row = 1; row <= values.Length - MinRows; row++)
        {
            sum += values[row - 1];
            if (row < MinRows)
                continue;
            int rest = values.Length - row;
            double contrast = Math.Abs(sum / row - (total - sum) / rest) * Math.Sqrt((double)row * rest);
            if (contrast > best)
                (best, split) = (contrast, row);
        }
        return split;
    }

    private static double Jump(double[] values, int row, int window) =>
        OrderStatistics.Median(values.AsSpan(row, window))
        - OrderStatistics.Median(values.AsSpan(row - window, window));

    /// <summary>
    /// Standard deviation of one row, from the differences of neighbouring rows, so slow structure does not count.
    /// </summary>
    private static double RowNoise(double[] values)
    {
        double[] steps = [.. values.Skip(1).Zip(values, (next, value) => next - value)];
        return OrderStatistics.MadSigma(steps) / Math.Sqrt(2);
    }

    /// <summary>
    /// Standard error of the difference of two medians of n normal values each, for a standard deviation of 1 (large
    /// n).
    /// </summary>
    private static double MedianError(int n) => Math.Sqrt(Math.PI / n);

    private static double Scatter(double[] values, double centre) =>
        OrderStatistics.MadToSigma * OrderStatistics.Median([.. values.Select(value => Math.Abs(value - centre))]);
}
