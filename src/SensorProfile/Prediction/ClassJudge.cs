using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>Learns from left-out darks how far the uncertainty of each class of pixels must be widened.</summary>
/// <remarks>
/// Two parts. An error m that all pixels of a class share in a set (<see cref="ClassTally.Common"/>) means that a law
/// does not hold: c² = mean of m² − u²(m) over the sets, each with the weight 1/u²(m), so that a set that shows next to
/// nothing does not dominate. The rest belongs to single pixels: f is the factor on their own variance, at least 1, at
/// which 95 % lie within their intervals. Claimed is f·V + (c·S)², S the signal above the typical pixel's. A class is
/// refused where it has fewer than 20 pixels (hot pixels join the next fainter class first), where f exceeds 25, where
/// c exceeds 0.1 (as much as 1 °C makes: the temperature or the law is wrong) and that matters (less than 90 % within
/// the plain intervals), or where less than 75 % of a hundred or more pixels of a single set lie within the widened
/// ones.
/// </remarks>
internal static class ClassJudge
{
    private const double Claimed = 0.95,
        MaxFactor = 25,
        MaxCommon = 0.1,
        Matters = 0.9,
        MinCoverageInOneSet = 0.75;
    private const int MinPixels = 20,
        MinPixelsInOneSet = 100,
        Halvings = 30;

    /// <summary>The classes that have pixels, ordinary ones first.</summary>
    public static IReadOnlyList<JudgedClass> Judge(IReadOnlyList<MasterComparison> comparisons)
    {
        ClassTally[] Of(int number) => [.. comparisons.Select(c => c.Classes[number])];
        var judged = new List<JudgedClass>();
        foreach (PixelKind kind in new[] { PixelKind.Typical, PixelKind.Glow })
            Add(kind, Of(BrightnessClass.Classify(kind, 0)), 0, null);
        foreach ((double from, double? to, ClassTally[] sets) in Hot(Of))
            Add(PixelKind.Hot, sets, from, to);
        Add(PixelKind.Flickering, Of(BrightnessClass.Classify(PixelKind.Flickering, 0)), 0, null);
        return judged;

        void Add(PixelKind kind, ClassTally[] sets, double from, double? to)
        {
            if (sets.Sum(s => s.Pixels) == 0)
                return;
            JudgedClass learnt = Learn(kind, sets);
            judged.Add(learnt with { Class = learnt.Class with { FromNoise = from, ToNoise = to } });
        }
    }

    /// <summary>Hot pixels by brightness: classes too small to be judged join their fainter neighbour.</summary>
    private static List<(double From, double? To, ClassTally[] Sets)> Hot(Func<int, ClassTally[]> of)
    {
        var classes = BrightnessClass
            .Hot.Select(c => (From: BrightnessClass.From(c), To: BrightnessClass.To(c), Sets: of(c)))
            .ToList();
        for (int c = classes.Count - 1; c > 0; c--)
            if (IsFew(classes[c].Sets))
                Join(c - 1);
        if (classes.Count > 1 && IsFew(classes[0].Sets))
            Join(0);
        return classes;

        void Join(int fainter)
        {
            var (a, b) = (classes[fainter], classes[fainter + 1]);
            ClassTally[] sets = [.. a.Sets.Zip(b.Sets, (x, y) =>
                {
                    var both = new ClassTally();
                    both.Add(x);
                    both.Add(y);
                    return both;
                })];
            classes[fainter] = (a.From, b.To, sets);
            classes.RemoveAt(fainter + 1);
        }
    }

    // the same pixels recur in every set
    private static bool IsFew(ClassTally[] sets) => sets.Sum(s => (double)s.Pixels) / sets.Length < MinPixels;

    private static JudgedClass Learn(PixelKind kind, ClassTally[] sets)
    {
        long pixels = sets.Sum(s => (long)s.Pixels);
        double Coverage(ClassDoubt doubt) => sets.Sum(s => (long)s.Within(doubt)) / (double)pixels;
        double common = kind is PixelKind.Hot or PixelKind.Glow ? Common(sets) : 0;
        ClassDoubt doubt = new(Factor(common, Coverage), common);
        ClassRefusal? refused =
            IsFew(sets) ? ClassRefusal.TooFew
            : common > MaxCommon && Coverage(ClassDoubt.None) < Matters ? ClassRefusal.CommonError
            : doubt.Factor > MaxFactor || sets.Any(s => IsFar(s, doubt)) ? ClassRefusal.Unsteady
            : null;
        PredictionFigures pooled = ClassTally.Pool(sets.Select(s => s.Figures(doubt)))!;
        return new(
            kind,
            new()
            {
                Pixels = Name(kind),
                Compared = pixels,
                PlainCoverage = Coverage(ClassDoubt.None),
                Coverage = pooled.Coverage,
                VarianceFactor = doubt.Factor,
                CommonShare = common,
                Residual = pooled.Residual,
                Expected = pooled.Expected,
                Refused = refused,
            },
            pooled
        );
    }

    private static bool IsFar(ClassTally set, ClassDoubt doubt) =>
        set.Pixels >= MinPixelsInOneSet && set.Within(doubt) < MinCoverageInOneSet * set.Pixels;

    private static double Common(ClassTally[] sets)
    {
        (double Share, double Variance)[] known = [.. sets.Select(s => s.Common()).OfType<(double, double)>()];
        if (known.Length == 0)
            return 0;
        double square = known.Sum(m => m.Share * m.Share / m.Variance - 1) / known.Sum(m => 1 / m.Variance);
        return Math.Sqrt(Math.Max(0, square));
    }

    private static double Factor(double common, Func<ClassDoubt, double> coverage)
    {
        if (coverage(new(1, common)) >= Claimed)
            return 1;
        double low = 0,
            high = Math.Log(4 * MaxFactor);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            if (coverage(new(Math.Exp(middle), common)) < Claimed)
                low = middle;
            else
                high = middle;
        }
        return Math.Exp(high);
    }

    /// <summary>Name of a kind in profiles.</summary>
    public static string Name(PixelKind kind) =>
        kind switch
        {
            PixelKind.Hot => "hot",
            PixelKind.Glow => "glow",
            PixelKind.Flickering => "flickering",
            _ => "typical",
        };
}

/// <summary>A class with what is claimed of it.</summary>
/// <param name="Kind">Its kind.</param> <param name="Class">The claim.</param>
/// <param name="Figures">Figures over all sets, with the uncertainty claimed.</param>
internal sealed record JudgedClass(PixelKind Kind, PredictionClass Class, PredictionFigures Figures);
