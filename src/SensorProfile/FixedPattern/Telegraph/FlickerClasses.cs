using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>
/// Groups the pixels that jump between levels into a few classes of similar step, for the noise budget.
/// </summary>
internal static class FlickerClasses
{
    private const int MaxClasses = 5; // of each kind, with equal numbers of pixels

    /// <summary>The classes, readout steps first, weakest first; empty without such pixels.</summary>
    /// <remarks>
    /// Scatter of a pixel: s·√(f(1 − f)) for two levels; for three, two steps that come and go independently, s·√(2f(1
    /// − f)). Its standard uncertainty is that of the step.
    /// </remarks>
    /// <param name="fits">The pixels found by the level test.</param>
    /// <param name="noisy">Pixels without resolved levels that scatter by more than noise explains: their scatter and
    /// its growth are known, their memory is not.</param>
    public static IReadOnlyList<FlickerClass> Group(
        IEnumerable<TelegraphFit> fits,
        IEnumerable<ExcessNoise>? noisy = null
    )
    {
        TelegraphFit[] all = [.. fits];
        ExcessNoise[] others = [.. noisy ?? []];
        return
        [
            .. Kind(all, thermal: false),
            .. Kind(all, thermal: true),
            .. Noisy(others, thermal: false),
            .. Noisy(others, thermal: true),
        ];
    }

    private static IEnumerable<FlickerClass> Noisy(ExcessNoise[] noisy, bool thermal)
    {
        ExcessNoise[] sorted =
        [
            .. noisy.Where(n => n.Thermal == thermal && n.Scatter > 0).OrderBy(n => n.Scatter).ThenBy(n => n.Ratio),
        ];
        int classes = Math.Min(MaxClasses, sorted.Length);
        for (int c = 0; c < classes; c++)
        {
            ExcessNoise[] members = sorted[(c * sorted.Length / classes)..((c + 1) * sorted.Length / classes)];
            double rms = Math.Sqrt(members.Average(n => n.Scatter * n.Scatter)),
                doubt =
                    Math.Sqrt(members.Sum(n => Math.Pow(n.Scatter * n.ScatterUncertainty, 2))) / (members.Length * rms);
            yield return new FlickerClass(
                thermal,
                members.Length,
                new Measurement(
                    rms,
                    doubt,
                    thermal ? "e-/px/s" : "e-",
                    members.Length,
                    "scatter of the single pixels beyond noise and signal"
                ),
                null
            );
        }
    }

    private static IEnumerable<FlickerClass> Kind(TelegraphFit[] fits, bool thermal)
    {
        TelegraphFit[] sorted =
        [
            .. fits.Where(f => f.Thermal == thermal && f.UpperShare is > 0 and < 1)
                .OrderBy(Scatter)
                .ThenBy(f => f.Step),
        ];
        int classes = Math.Min(MaxClasses, sorted.Length);
        for (int c = 0; c < classes; c++)
        {
            TelegraphFit[] members = sorted[(c * sorted.Length / classes)..((c + 1) * sorted.Length / classes)];
            double square = members.Average(f => Scatter(f) * Scatter(f)),
                rms = Math.Sqrt(square);
            double doubt =
                Math.Sqrt(members.Sum(f => Math.Pow(Scatter(f) * Scatter(f) * f.StepUncertainty / f.Step, 2)))
                / (members.Length * rms);
            double[] memories =
            [
                .. members
                    .Select(f => f.Dwell)
                    .OfType<DwellTimes>()
                    .Select(d => d.UpperSeconds * d.LowerSeconds / (d.UpperSeconds + d.LowerSeconds)),
            ];
            yield return new FlickerClass(
                thermal,
                members.Length,
                new Measurement(rms, doubt, thermal ? "e-/px/s" : "e-", members.Length, "levels of the single pixels"),
                memories.Length > 0 ? OrderStatistics.Median(memories) : null
            );
        }
    }

    private static double Scatter(TelegraphFit fit) =>
        fit.Step * Math.Sqrt((fit.Levels - 1) * fit.UpperShare * (1 - fit.UpperShare));
}
