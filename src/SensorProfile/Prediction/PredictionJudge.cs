using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>When a way to come by a master dark counts as proven.</summary>
/// <remarks>Of the pixels of each kind 90 % must lie within their 95 % interval, less what counting so few pixels
/// leaves open, and 75 % in every single set of a hundred or more pixels.
/// Fewer than 20 pixels of a kind are not judged.</remarks>
internal static class PredictionJudge
{
    private const double MinCoverage = 0.90,
        MinCoverageInOneSet = 0.75;
    private const int MinPixels = 20,
        MinPixelsInOneSet = 100;

    private static readonly string[] names = ["typical", "hot", "glow"];

    /// <summary>The verdict over several comparisons; null without any.</summary>
    public static PredictionTest? Judge(IReadOnlyList<MasterComparison> comparisons)
    {
        if (comparisons.Count == 0)
            return null;
        PredictionFigures?[] pooled =
        [
            .. names.Select(
                (_, kind) =>
                    KindTally.Pool(comparisons.Select(c => c.Figures[kind])) is { Pixels: >= MinPixels } all
                        ? all
                        : null
            ),
        ];
        string? failed = names
            .Where(
                (_, kind) =>
                    pooled[kind] is { } all
                    && Fails(all, [.. comparisons.Select(c => c.Figures[kind]).OfType<PredictionFigures>()])
            )
            .FirstOrDefault();
        return new PredictionTest
        {
            Passed = failed is null && pooled[0] is not null,
            Sets = comparisons.Count,
            Typical = pooled[0],
            Hot = pooled[1],
            Glow = pooled[2],
            FailedBy = pooled[0] is null ? names[0] : failed,
        };
    }

    private static bool Fails(PredictionFigures all, PredictionFigures[] sets)
    {
        double independent = (double)all.Pixels / sets.Length; // the same pixels come back in every set
        double open = 2 * Math.Sqrt(MinCoverage * (1 - MinCoverage) / independent);
        return all.Coverage < MinCoverage - open
            || sets.Any(s => s.Pixels >= MinPixelsInOneSet && s.Coverage < MinCoverageInOneSet);
    }
}
