using SensorProfile.Decisions.Tolerance;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>
/// When darks taken at the last date will cost a stack more than its limits allow, if the trend continues.
/// </summary>
/// <remarks>
/// Dark current that has grown by a factor f since the darks were taken leaves the same residual as darks that are
/// ΔT₂·log₂ f too cold; so the allowed factor is 2^(δ/ΔT₂), δ the cold-side tolerance of the dark matching (typical
/// pixels, hot pixels, glow or level, whichever fails first). New hot pixels are counted separately: the library lacks
/// them all, and they may not exceed the accepted share of the pixels.
/// </remarks>
internal static class LibraryOutlook
{
    private const double FarAway = 100; // years; nobody plans further ahead

    /// <summary>
    /// The forecast for one mode; null when the stack cannot be judged from the profile (a finding says why).
    /// </summary>
    public static LibraryForecast? Forecast(
        MatchedMode mode,
        DriftTrend rate,
        double doubling,
        HotPixelDrift? hot,
        ToleranceQuestion stack,
        List<Finding> findings
    )
    {
        (ProfileOnDisk last, int index) = mode.Members[^1];
        try
        {
            ToleranceAnswer tolerance = DarkTolerance.Find(
                last.Profile,
                last.Profile.Modes[index],
                stack with
                {
                    Sky = stack.Sky ?? NamedSkies.Suburban,
                }
            );
            CauseTolerance? cause = tolerance
                .Causes.Where(c => c.Known && c.Colder is not null)
                .MinBy(c => c.Colder!.Value);
            double allowed = cause is null ? double.PositiveInfinity : Math.Pow(2, cause.Colder!.Value / doubling);
            double now = rate.Forecast.First(p => !p.Beyond && p.DateUtc == rate.Points[^1].DateUtc).Value;
            double? Years(double slope) =>
                slope > 0 && now > 0 && (allowed - 1) * now / slope is var years and < FarAway ? years : null;
            double reach = Probability.Normal95 * rate.PerYear.StandardUncertainty,
                slope = rate.PerYear.Value;
            double? best = rate.Changed ? Years(slope) : null,
                earliest = Years(slope + reach),
                latest = best is null ? null : Years(slope - reach);
            LibraryLimit? limit = cause is null ? null : LimitOf(cause.Cause);
            if (
                hot?.NewPerYear is { Value: > 0 } born
                && stack.Limits.HotShare * 1e6 / born.Value is var hotYears
                && hotYears < Math.Min(best ?? FarAway, FarAway)
                && hot.New >= 10
            )
                (best, earliest, latest, limit) = (
                    hotYears,
                    hotYears * (1 - Probability.Normal95 / Math.Sqrt(hot.New)),
                    hotYears * (1 + Probability.Normal95 / Math.Sqrt(hot.New)),
                    LibraryLimit.NewHotPixels
                );
            DateTimeOffset? Date(double? years) =>
                years is double y ? rate.Points[^1].DateUtc.AddDays(Math.Max(y, 0) * TrendFit.DaysPerYear) : null;
            return new LibraryForecast(
                mode.Name,
                Date(best),
                Date(earliest),
                Date(latest),
                limit,
                stack.Lights,
                stack.ExposureSeconds,
                stack.Limits.NoiseLoss
            );
        }
        catch (DecisionRefusedException refusal)
        {
            findings.Add(
                new Finding(
                    FindingCodes.LibraryNotJudged,
                    Severity.Note,
                    $"How long the present darks will stay good was not worked out: {refusal.Message}"
                )
            );
            return null;
        }
    }

    private static LibraryLimit LimitOf(BindingCause cause) =>
        cause switch
        {
            BindingCause.HotPixels => LibraryLimit.HotPixels,
            BindingCause.Typical => LibraryLimit.Typical,
            BindingCause.Glow => LibraryLimit.Glow,
            _ => LibraryLimit.Level,
        };
}
