using MathNet.Numerics.Distributions;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>Makes the black-level record from the levels of bias and dark frames.</summary>
internal static class BlackLevelMeasurement
{
    private const int MaxPoints = 512;

    /// <summary>Measures the black level; null with too few frames.</summary>
    /// <param name="frames">The frames, in time order.</param>
    /// <param name="series">One per temperature, indexed by <see cref="BlackLevelFrame.Series"/>.</param>
    /// <param name="electronsPerAdu">Gain, e-/ADU; without it, everything in electrons is left out.</param>
    public static BlackLevelProfile? Measure(
        IReadOnlyList<BlackLevelFrame> frames,
        IReadOnlyList<BlackLevelSeries> series,
        Measurement? electronsPerAdu
    )
    {
        if (BlackLevelFit.Fit(frames) is not { } fit)
            return null;
        frames = fit.Frames;
        DarkCurrentLimit[] limits = electronsPerAdu is { } gain
            ? [.. series.Select((s, k) => Limit(fit, s, k, gain))]
            : [];
        return new BlackLevelProfile
        {
            Level = fit.Term(
                BlackLevelDesign.Level,
                "ADU",
                "median levels minus their dark signal, at the mean time and temperature"
            ),
            Jitter = Scatter(
                fit.Jitter,
                frames.Min(f => f.Noise * f.Noise),
                fit.JitterFreedom,
                frames.Count,
                "differences of neighbouring frames beyond their noise"
            ),
            SetScatter =
                fit.SetFreedom < 1
                    ? null
                    : Scatter(
                        fit.SetScatter,
                        fit.SetNoise * fit.SetNoise,
                        fit.SetFreedom,
                        frames.Select(f => f.Set).Distinct().Count(),
                        "set levels about the fit, beyond the jitter of the frames"
                    ),
            DriftPerHour = fit.Term(BlackLevelDesign.Hour, "ADU/h", Joint),
            DriftPerDegree = fit.Term(BlackLevelDesign.Degree, "ADU/°C", Joint),
            DriftPerSecond = electronsPerAdu is null ? null : PerSecond(fit, series, electronsPerAdu),
            FirstFrameDifference = fit.Term(BlackLevelDesign.First, "ADU", Joint),
            Jumps =
            [
                .. FrameScatter
                    .Steps(frames, fit.Residuals)
                    .Select(i => new BlackLevelJump(frames[i].Name, Step(fit, frames, i))),
            ],
            Limits = limits,
            SmallestDarkCurrent = limits.Select(l => l.Smallest).OfType<Measurement>().MinBy(m => m.Value),
            CannotTell = [.. CannotTell(fit, series, electronsPerAdu)],
            Points = Points(fit, frames),
        };
    }

    private const string Joint = "least squares of level on time, temperature, exposure and first frames together";

    /// <summary>
    /// A scatter s that was seen through noise of variance v with ν degrees of freedom: (s² + v)·ν over the true value is χ² of
    /// ν, a skewed law, so that s is more often too small by much than too large. u is that of a normal law with the same
    /// upper limit of 97.5 %: s + 1.96·u = √((s² + v)·ν/χ²₂.₅ − v).
    /// </summary>
    private static Measurement Scatter(double value, double noiseVariance, double freedom, int samples, string method)
    {
        double nu = Math.Max(1, freedom),
            upper = ((value * value + noiseVariance) * nu / ChiSquared.InvCDF(nu, 0.025)) - noiseVariance;
        return new(value, (Math.Sqrt(upper) - value) / 1.96, "ADU", samples, method);
    }

    private static Measurement Step(BlackLevelFit fit, IReadOnlyList<BlackLevelFrame> frames, int i) =>
        new(
            fit.Residuals[i] - fit.Residuals[i - 1],
            Math.Sqrt(
                2 * fit.Jitter * fit.Jitter
                    + frames[i].Noise * frames[i].Noise
                    + frames[i - 1].Noise * frames[i - 1].Noise
            ),
            "ADU",
            2,
            "difference of neighbouring frames"
        );

    private static DarkCurrentLimit Limit(BlackLevelFit fit, BlackLevelSeries series, int k, Measurement gain)
    {
        string name = $"{BlackLevelDesign.Rise}{k}";
        Measurement? rise = fit.Term(name, "ADU/s", Joint);
        Measurement? rate = rise is null
            ? null
            : new(
                rise.Value * gain.Value,
                Math.Sqrt(
                    Math.Pow(rise.StandardUncertainty * gain.Value, 2)
                        + Math.Pow(rise.Value * gain.StandardUncertainty, 2)
                ),
                "e-/px/s",
                rise.Samples,
                Joint
            );
        double smallest = Probability.OneSided95 * (rise?.StandardUncertainty ?? 0) * gain.Value;
        return new DarkCurrentLimit
        {
            Temperature = series.TemperatureCelsius,
            LongestExposure = series.LongestSeconds,
            Smallest = rise is null
                ? null
                : new(
                    smallest,
                    smallest / Math.Sqrt(2 * Math.Max(1, fit.Freedom(name))),
                    "e-/px/s",
                    rise.Samples,
                    "1.645 standard uncertainties of the level's rise with exposure"
                ),
            Rate = rate,
        };
    }

    /// <summary>
    /// Rise of the level minus what the growth of the noise explains, averaged over the temperatures with weights 1/u².
    /// </summary>
    /// <remarks>The noise is clipped, so its rate lies between that of the median pixel and that of the mean pixel: the
    /// middle is taken, with the uncertainty of a rectangular distribution, half-width/√3. This part and the
    /// uncertainty of the gain are common to all temperatures.</remarks>
    private static Measurement? PerSecond(BlackLevelFit fit, IReadOnlyList<BlackLevelSeries> series, Measurement gain)
    {
        double weights = 0,
            sum = 0,
            common = 0;
        long samples = 0;
        for (int k = 0; k < series.Count; k++)
        {
            if (
                series[k].FromNoise is not { } noise
                || fit.Term($"{BlackLevelDesign.Rise}{k}", "ADU/s", Joint) is not { } rise
            )
                continue;
            double g = gain.Value,
                half = series[k].MeanAboveTypical / 2 / g;
            double shared = Math.Sqrt(half * half / 3 + Math.Pow(noise.Value / g * gain.StandardUncertainty / g, 2));
            double own = Math.Sqrt(
                rise.StandardUncertainty * rise.StandardUncertainty + Math.Pow(noise.StandardUncertainty / g, 2)
            );
            double weight = 1 / (own * own + shared * shared);
            weights += weight;
            sum += weight * (rise.Value + half - noise.Value / g);
            common += weight * shared;
            samples += rise.Samples;
        }
        return weights > 0
            ? new(
                sum / weights,
                Math.Sqrt(1 / weights + Math.Pow(common / weights, 2)),
                "ADU/s",
                samples,
                "rise of the level minus the dark current that the growth of the noise shows"
            )
            : null;
    }

    private static IEnumerable<string> CannotTell(
        BlackLevelFit fit,
        IReadOnlyList<BlackLevelSeries> series,
        Measurement? gain
    )
    {
        BlackLevelDesign design = fit.Design;
        foreach (string missing in design.Missing)
            yield return missing
                .Replace(BlackLevelDesign.Hour + ":", "Drift with time:", StringComparison.Ordinal)
                .Replace(BlackLevelDesign.Degree + ":", "Drift with temperature:", StringComparison.Ordinal) + ".";
        if (design.Has(BlackLevelDesign.Hour) && !design.Tells(BlackLevelDesign.Hour))
            yield return "Drift with time: it cannot be separated from temperature and exposure; bias frames at the start, "
                + "middle and end of the session would settle it.";
        if (design.Has(BlackLevelDesign.Degree) && !design.Tells(BlackLevelDesign.Degree))
            yield return "Drift with temperature: it cannot be separated from time or exposure; bias frames at every temperature "
                + "would settle it.";
        if (design.Has(BlackLevelDesign.First) && !design.Tells(BlackLevelDesign.First))
            yield return "First frame after a pause: too few frames follow it for a comparison.";
        int mixed = Enumerable
            .Range(0, series.Count)
            .Count(k => design.Has($"{BlackLevelDesign.Rise}{k}") && !design.Tells($"{BlackLevelDesign.Rise}{k}"));
        if (mixed > 0)
            yield return $"Rise with exposure at {mixed} of {series.Count} temperatures: it cannot be separated from time; exposures "
                + "in mixed order would settle it.";
        if (series.Count > 0 && gain is not null && series.All(s => s.FromNoise is null))
            yield return "Drift with exposure: it needs pairs of darks at two exposures.";
    }

    private static IReadOnlyList<BlackLevelPoint> Points(BlackLevelFit fit, IReadOnlyList<BlackLevelFrame> frames)
    {
        int count = Math.Min(MaxPoints, frames.Count);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(n =>
                {
                    int i = (int)((long)n * frames.Count / count);
                    double dark = frames[i].Series is { } k
                            ? fit.Value($"{BlackLevelDesign.Rise}{k}") * frames[i].EquivalentSeconds
                            : 0,
                        level = frames[i].Level - dark;
                    return new BlackLevelPoint(
                        frames[i].Hours is { } h ? Math.Round(h, 6) : null,
                        frames[i].TemperatureCelsius,
                        frames[i].ExposureSeconds,
                        Math.Round(level, 4),
                        Math.Round(frames[i].Noise, 5),
                        Math.Round(level - fit.Residuals[i], 4)
                    );
                }),
        ];
    }
}
