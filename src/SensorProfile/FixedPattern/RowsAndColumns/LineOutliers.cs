using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Finds lines that stand out from the lines on both sides.</summary>
/// <remarks>Excess is the smaller of the differences to the median of the 8 lines before and to that of the 8 lines
/// after, or 0 if their signs differ. So neither a gradient nor a step between two halves of the sensor turns the
/// adjacent lines into defects. At the edge, the one existing side is used. A line is a defect when its excess is above
/// the minimum asked for and above 7 robust standard deviations of the lines about the middle of the two medians (a
/// normal value exceeds that with probability 2.6e-12).</remarks>
internal static class LineOutliers
{
    private const int Reach = 8;
    private const double Sigmas = 7;

    /// <summary>0-based lines with their excess and its robust standard deviation.</summary>
    /// <param name="means">Mean of each line.</param> <param name="least">Minimum excess, in the unit of the
    /// means.</param>
    public static IReadOnlyList<(int Line, double Excess, double Sigma)> Find(double[] means, double least)
    {
        if (means.Length < 2 * Reach)
            return [];
        double[] before = new double[means.Length],
            behind = new double[means.Length];
        for (int i = 0; i < means.Length; i++)
        {
            int earlier = Math.Min(i, Reach),
                later = Math.Min(Reach, means.Length - 1 - i);
            before[i] =
                earlier == 0 ? double.NaN : means[i] - OrderStatistics.Median(means.AsSpan(i - earlier, earlier));
            behind[i] = later == 0 ? before[i] : means[i] - OrderStatistics.Median(means.AsSpan(i + 1, later));
        }
        before[0] = behind[0];
        double sigma = OrderStatistics.MadSigma([.. before.Zip(behind, (a, b) => (a + b) / 2)]),
            limit = Math.Max(least, Sigmas * sigma);
        return
        [
            .. Enumerable
                .Range(0, means.Length)
                .Select(i => (Line: i, Excess: Smaller(before[i], behind[i]), Sigma: sigma))
                .Where(l => Math.Abs(l.Excess) > limit),
        ];
    }

    private static double Smaller(double before, double behind) =>
        before * behind <= 0 ? 0
        : Math.Abs(before) < Math.Abs(behind) ? before
        : behind;
}
