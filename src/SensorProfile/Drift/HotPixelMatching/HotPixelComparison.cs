using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Patches;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>Turns matched hot pixels into counts, rates per year and patches.</summary>
internal static class HotPixelComparison
{
    public static HotPixelDrift Compare(
        string mode,
        HotPixelMatch match,
        PixelRates last,
        double threshold,
        double years,
        DriftOptions options
    )
    {
        HotPixelChange[] all = [.. match.Changes()];
        long Count(PixelChange change) => all.LongCount(p => p.Change == change);
        HotPixelChange[] born = [.. all.Where(p => p.Change == PixelChange.New)];
        double megapixelYears = years * last.Width * last.Height / 1e6;
        return new HotPixelDrift
        {
            Mode = mode,
            Width = last.Width,
            Height = last.Height,
            Unchanged = [.. all.Where(p => p.Change == PixelChange.Kept).Select(p => new OutlinePoint(p.X, p.Y))],
            GrowthPerYear = Growth(born.Length, Count(PixelChange.Healed), all.Length - born.Length, years),
            Kept = Count(PixelChange.Kept) + Count(PixelChange.Brighter) + Count(PixelChange.Fainter),
            New = born.Length,
            Healed = Count(PixelChange.Healed),
            Brighter = Count(PixelChange.Brighter),
            Fainter = Count(PixelChange.Fainter),
            Flickering = match.Flickering,
            Threshold = threshold,
            CommonFactor = match.Factor,
            NewPerYear = PerYear(born.Length, megapixelYears),
            HealedPerYear = PerYear(Count(PixelChange.Healed), megapixelYears),
            Patches = PatchScan.Find(
                [.. born.Select(p => new OutlinePoint(p.X, p.Y))],
                last.Width,
                last.Height,
                options.Layouts,
                options.Seed
            ),
            Pixels = [.. all.Where(p => p.Change != PixelChange.Kept)],
        };
    }

    /// <summary>
    /// Whether significantly more pixels turned hot than healed; noise and flicker produce as many of one as of the
    /// other.
    /// </summary>
    public static (double Z, double P) Net(HotPixelDrift drift)
    {
        double p = DriftTest.CountsP(drift.Healed, drift.New);
        return (DriftTest.ZOf(p, drift.New - drift.Healed), p);
    }

    private static Measurement? Growth(long born, long healed, long before, double years) =>
        !(years > 0.05) || before < 1
            ? null
            : new Measurement(
                100.0 * (born - healed) / before / years,
                100 * Math.Sqrt(Math.Max(1, born + healed)) / before / years,
                "% per year",
                born + healed,
                "new less healed over those hot before, Poisson"
            );

    private static Measurement? PerYear(long count, double megapixelYears)
    {
        if (!(megapixelYears > 0))
            return null;
        (double low, double high) = CountIntervals.PoissonOneSigma(count);
        return new Measurement(
            count / megapixelYears,
            (high - low) / 2 / megapixelYears,
            "px per year and million pixels",
            count,
            "count, Poisson"
        );
    }
}
