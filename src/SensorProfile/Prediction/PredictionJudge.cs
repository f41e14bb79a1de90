using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>Decides when a way of making a master dark counts as proven.</summary>
/// <remarks>
/// A plain way (scaling, mixing): 90 % of the pixels of each kind must lie within their 95 % interval, less what
/// counting so few pixels leaves open, and 75 % in every single set of a hundred or more pixels; kinds with fewer than
/// 20 pixels are not judged. A computed dark is judged and claimed class by class (<see cref="ClassJudge"/>): it fails
/// where its ordinary pixels are refused, where classes that fail hold more than half of the hot pixels (a wrong
/// temperature does that), or where a glow that fails holds more than a tenth of the frame.
/// </remarks>
internal static class PredictionJudge
{
    private const double MinCoverage = 0.90,
        MinCoverageInOneSet = 0.75,
        MaxRefusedOfHot = 0.5,
        MaxRefusedOfFrame = 0.1;
    private const int MinPixels = 20,
        MinPixelsInOneSet = 100;

    private static readonly PixelKind[] kinds = [PixelKind.Typical, PixelKind.Hot, PixelKind.Glow];

    /// <summary>The verdict on a plain way over several comparisons; null without any.</summary>
    public static PredictionTest? Judge(IReadOnlyList<MasterComparison> comparisons)
    {
        if (comparisons.Count == 0)
            return null;
        PredictionFigures[][] sets =
        [
            .. kinds.Select(kind => comparisons.Select(c => c.Figures(kind)).OfType<PredictionFigures>().ToArray()),
        ];
        PredictionFigures?[] pooled =
        [
            .. sets.Select(s => ClassTally.Pool(s) is { Pixels: >= MinPixels } all ? all : null),
        ];
        int failed = Enumerable
            .Range(0, kinds.Length)
            .FirstOrDefault(k => pooled[k] is { } all && Fails(all, sets[k]), -1);
        return new PredictionTest
        {
            Passed = failed < 0 && pooled[0] is not null,
            Sets = comparisons.Count,
            Typical = pooled[0],
            Hot = pooled[1],
            Glow = pooled[2],
            FailedBy =
                pooled[0] is null ? ClassJudge.Name(PixelKind.Typical)
                : failed < 0 ? null
                : ClassJudge.Name(kinds[failed]),
        };
    }

    /// <summary>
    /// The verdict on computed darks, with what is claimed of every class of pixels; null without comparisons.
    /// </summary>
    public static PredictionTest? Claim(IReadOnlyList<MasterComparison> comparisons)
    {
        if (comparisons.Count == 0)
            return null;
        IReadOnlyList<JudgedClass> classes = ClassJudge.Judge(comparisons);
        PredictionFigures? Claimed(PixelKind kind) =>
            ClassTally.Pool(classes.Where(c => c.Kind == kind).Select(c => c.Figures));
        (double level, double share) = LevelDoubt(comparisons);
        PredictionClass[] found = [.. classes.Select(c => c.Class)];
        string? failed = FailedBy(found);
        return new PredictionTest
        {
            Passed = failed is null,
            Sets = comparisons.Count,
            Typical = Claimed(PixelKind.Typical),
            Hot = Claimed(PixelKind.Hot),
            Glow = Claimed(PixelKind.Glow),
            Flickering = Claimed(PixelKind.Flickering),
            FailedBy = failed,
            Classes = found,
            LevelDoubt = level,
            LevelDoubtShare = share,
        };
    }

    /// <summary>
    /// How far the common level was off: a constant part, from the fainter half of the sets, and a part in proportion
    /// to the typical signal, from the rest.
    /// </summary>
    public static (double Electrons, double Share) LevelDoubt(IReadOnlyList<MasterComparison> judged)
    {
        MasterComparison[] byLight = [.. judged.OrderBy(c => c.TypicalSignal)];
        int half = (byLight.Length + 1) / 2;
        double constant = byLight.Take(half).Average(c => c.Level * c.Level);
        double light = byLight.Skip(half).Sum(c => c.TypicalSignal * c.TypicalSignal),
            excess = byLight.Skip(half).Sum(c => c.Level * c.Level - constant);
        return (Math.Sqrt(constant), light > 0 && excess > 0 ? Math.Sqrt(excess / light) : 0);
    }

    private static string? FailedBy(PredictionClass[] classes)
    {
        string typical = ClassJudge.Name(PixelKind.Typical),
            hot = ClassJudge.Name(PixelKind.Hot),
            glow = ClassJudge.Name(PixelKind.Glow);
        long Pixels(string kind, bool failing) =>
            classes
                .Where(c => c.Pixels == kind && (!failing || c.Refused is not (null or ClassRefusal.TooFew)))
                .Sum(c => c.Compared);
        if (classes.FirstOrDefault(c => c.Pixels == typical) is not { Refused: null })
            return typical;
        if (Pixels(hot, failing: true) > MaxRefusedOfHot * Pixels(hot, failing: false))
            return hot;
        double frame = (double)PredictionTrial.OrdinaryJudged * Pixels(typical, failing: false) + Pixels(glow, false);
        return Pixels(glow, failing: true) > MaxRefusedOfFrame * frame ? glow : null;
    }

    private static bool Fails(PredictionFigures all, PredictionFigures[] sets)
    {
        double independent = (double)all.Pixels / sets.Length; // the same pixels come back in every set
        double open = 2 * Math.Sqrt(MinCoverage * (1 - MinCoverage) / independent);
        return all.Coverage < MinCoverage - open
            || sets.Any(s => s.Pixels >= MinPixelsInOneSet && s.Coverage < MinCoverageInOneSet);
    }
}
