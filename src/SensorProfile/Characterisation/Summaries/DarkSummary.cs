using SensorProfile.DarkCurrent.Laws;
using SensorProfile.DarkCurrent.Levels;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>Turns the lines and the law into the profile's record.</summary>
internal static class DarkSummary
{
    public static DarkCurrentProfile Summarise(
        DarkTemperature[] temperatures,
        TemperatureFitResult? fit,
        IReadOnlyList<Measurement> gains
    )
    {
        bool variance = UseVariance(temperatures);
        DarkCurrentPoint[] points = [.. temperatures.Select(t => Point(t, gains, variance))];
        // Without a law the rates refer to the temperature at which they are known best.
        DarkCurrentPoint? single = fit?.RateAtReference is null ? BestKnown(points, variance) : null;
        return new DarkCurrentProfile
        {
            Points = points,
            Models = fit?.Models ?? [],
            Selected = fit?.Selected,
            DoublingTemperature = fit?.DoublingTemperature,
            ReferenceTemperature = single?.Temperature ?? fit?.ReferenceTemperature,
            RateAtReference = fit?.RateAtReference ?? (single is null ? null : RateOf(single, variance)),
            MeasuredRange = [temperatures[0].TemperatureCelsius, temperatures[^1].TemperatureCelsius],
            Form = variance ? DarkForm.Variance : DarkForm.Level,
        };
    }

    /// <summary>The form that carries the answer: the level, or the variance where the camera pins its level.</summary>
    public static bool UseVariance(IReadOnlyList<DarkTemperature> temperatures)
    {
        int against = temperatures.Count(t => !t.LevelPinned && t.Typical is { Resolved: true });
        return temperatures.Count(t => t.LevelPinned) > against;
    }

    /// <summary>
    /// Relative uncertainty that all rates share: the gain's, doubled where the rate comes from the variance.
    /// </summary>
    public static double CommonRelativeUncertainty(IReadOnlyList<Measurement> gains, bool variance) =>
        (variance ? 2 : 1) * Math.Sqrt(gains.Sum(g => Math.Pow(g.StandardUncertainty / g.Value, 2))) / gains.Count;

    private static DarkCurrentPoint? BestKnown(DarkCurrentPoint[] points, bool variance) =>
        points
            .Where(p => RateOf(p, variance) is not null)
            .MinBy(p => RateOf(p, variance)!.StandardUncertainty / RateOf(p, variance)!.Value);

    private static Measurement? RateOf(DarkCurrentPoint point, bool variance) =>
        variance ? point.RateFromVariance : point.TypicalRate;

    internal static DarkCurrentPoint Point(DarkTemperature t, IReadOnlyList<Measurement> gains, bool pinned) =>
        new()
        {
            Temperature = t.TemperatureCelsius,
            TypicalRate =
                pinned || t.Typical is not { Resolved: true }
                    ? null
                    : Rate(
                        t.Typical,
                        gains,
                        false,
                        "rise of the median level with exposure (EMVA 1288, mean form)"
                            + (t.Shift.IsKnown ? ", what noise adds to a median taken off" : "")
                    ),
            MeanRate =
                pinned || t.Mean is not { Resolved: true }
                    ? null
                    : Rate(t.Mean, gains, false, "rise of the mean level with exposure (EMVA 1288)"),
            RateFromVariance = t.Variance is not { Resolved: true }
                ? null
                : Rate(
                    t.Variance,
                    gains,
                    true,
                    "rise of the clipped temporal variance with exposure (EMVA 1288, variance form)"
                ),
            UpperLimit = !pinned && t.Typical is { Resolved: false } line ? line.UpperLimit : null,
            Exposures = t.Exposures,
            Frames = t.Frames,
            Linear = !pinned && t.Typical is { Linear: true },
            Levels = t.Levels,
        };

    /// <summary>
    /// A slope in e-/s (or e-²/s, which is the same number for Poisson electrons) with the gain's uncertainty added.
    /// </summary>
    public static Measurement Rate(DarkSignalFit line, IReadOnlyList<Measurement> gains, bool variance, string method)
    {
        double common = CommonRelativeUncertainty(gains, variance) * line.Slope.Value;
        return new(
            line.Slope.Value,
            Math.Sqrt(line.Slope.StandardUncertainty * line.Slope.StandardUncertainty + common * common),
            "e-/px/s",
            line.Slope.Samples,
            method
        );
    }

    /// <summary>The same profile with its rates in ADU, for a camera whose gain is not known.</summary>
    public static DarkCurrentProfile InAdu(DarkCurrentProfile profile) =>
        profile with
        {
            Points =
            [
                .. profile.Points.Select(p =>
                    p with
                    {
                        TypicalRate = InAdu(p.TypicalRate),
                        MeanRate = InAdu(p.MeanRate),
                    }
                ),
            ],
            Models =
            [
                .. profile.Models.Select(m =>
                    m with
                    {
                        RateAtReference = InAdu(m.RateAtReference),
                        Parameters = [.. m.Parameters.Select(p => p with { Unit = InAdu(p.Unit) })],
                    }
                ),
            ],
            RateAtReference = InAdu(profile.RateAtReference),
        };

    /// <summary>The same night in ADU.</summary>
    public static DarkNight InAdu(DarkNight night) =>
        night with
        {
            TypicalRate = InAdu(night.TypicalRate),
            MeanRate = InAdu(night.MeanRate),
        };

    /// <summary>The same finding where rates are in ADU.</summary>
    public static Finding InAdu(Finding finding) =>
        finding with
        {
            Message = finding.Message.Replace("e⁻/px/s", "ADU/px/s", StringComparison.Ordinal),
        };

    private static Measurement? InAdu(Measurement? rate) => rate is null ? null : rate with { Unit = InAdu(rate.Unit) };

    private static string InAdu(string unit) => unit == "e-/px/s" ? "ADU/px/s" : unit;
}
