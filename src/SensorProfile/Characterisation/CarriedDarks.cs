using SensorProfile.Characterisation.Summaries;
using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>
/// Carries dark current, in electrons, from a mode with a temperature law to modes that have none of their own.
/// </summary>
/// <remarks>
/// Dark current arises in the pixel, before any amplifier: in e⁻ it is the same at every gain setting, as long as the
/// pixels are read in the same way (binning, read-out). So one set of darks serves a sweep of settings. Where two modes
/// have darks, this is tested: their rates in e⁻ must agree within <see cref="MaxSigmas"/> of their joint standard
/// uncertainty, gains included. A carried rate takes on the uncertainty of that test or, if untested,
/// <see cref="Untested"/>.
/// </remarks>
internal static class CarriedDarks
{
    /// <summary>Relative standard uncertainty that an untested rate takes on: our own choice, no source.</summary>
    internal const double Untested = 0.05;

    /// <summary>Disagreement beyond which nothing is carried: one in 700 by chance.</summary>
    internal const double MaxSigmas = 3.2;

    private const string RateUnit = "e-/px/s";

    /// <summary>The modes, with those that lack darks filled in.</summary>
    public static IReadOnlyList<MeasuredMode> Fill(IReadOnlyList<MeasuredMode> modes, FindingsLog log)
    {
        ModeProfile[] givers = [.. modes.Select(m => m.Profile).Where(HasLaw)];
        MeasuredMode[] filled =
        [
            .. modes.Select(m => HasLaw(m.Profile) || !HasGain(m.Profile) ? m : Filled(m, givers, log)),
        ];
        log.Mode = null;
        return filled;
    }

    private static MeasuredMode Filled(MeasuredMode taker, ModeProfile[] all, FindingsLog log)
    {
        ModeProfile own = taker.Profile;
        ModeProfile[] givers =
        [
            .. all.Where(g => g.Settings.Binning == own.Settings.Binning && g.Settings.Readout == own.Settings.Readout)
                .OrderBy(g => Distance(g, own)),
        ];
        if (givers.Length == 0)
            return taker;
        ModeProfile giver = givers[0];
        Comparison[] tests = [.. Tests(giver, own), .. givers.Skip(1).SelectMany(g => Tests(giver, g))];
        string from = ModeLabel.Text(giver.Settings);
        log.Mode = ModeLabel.Text(own.Settings);
        if (tests.Where(t => t.Sigmas > MaxSigmas).MaxBy(t => t.Sigmas) is { } worst)
        {
            log.Add(
                FindingCodes.DarkCurrentNotCarried,
                Severity.Warning,
                $"The dark current of {from} was not carried over, because in electrons the two settings tested "
                    + $"disagree by a factor of {QuantityText.Of(worst.Ratio)}: check that the flats and darks of {from} and "
                    + $"{worst.Other} belong to their settings."
            );
            return taker;
        }
        Measurement? best = tests.MinBy(t => t.Ratio.StandardUncertainty)?.Ratio;
        // the law exists now: nothing is refused for want of darks at this setting
        log.Withdraw(
            FindingCodes.TooFewTemperatures,
            FindingCodes.DarkRateNotResolved,
            FindingCodes.TemperatureLawNotDetermined
        );
        double doubt = Math.Min(Untested, best?.StandardUncertainty ?? Untested);
        log.Add(
            FindingCodes.DarkCurrentCarried,
            Severity.Note,
            $"Dark current and hot pixels are carried over from {from}, in electrons, where gain or ISO changes "
                + "nothing; "
                + (
                    best is null
                        ? Invariant(
                            $"no dark at another setting tests that, so {100 * doubt:0.#} % is added to its uncertainty. "
                        ) + "Two darks of different exposure at this setting would."
                        : $"darks at another setting agree with it (ratio {QuantityText.Of(best)})."
                )
        );
        return taker with
        {
            Profile = own with
            {
                DarkCurrent = Carried(giver.DarkCurrent!, giver, doubt),
                FixedPattern = Carried(giver.FixedPattern, own.FixedPattern, doubt),
            },
        };
    }

    private static bool HasLaw(ModeProfile mode) =>
        mode.DarkCurrent is { Selected: not null, RateAtReference.Value: > 0, DoublingTemperature: not null };

    private static bool HasGain(ModeProfile mode) =>
        mode.Gain is not null || (mode.Channels.Count > 0 && mode.Channels.All(c => c.Gain is not null));

    // The nearest setting: its darks saw the amplifier in the most similar state.
    private static double Distance(ModeProfile giver, ModeProfile taker) =>
        Math.Abs((giver.Settings.Gain ?? 0) - (taker.Settings.Gain ?? 0))
        + Math.Abs((giver.Settings.Iso ?? 0) - (taker.Settings.Iso ?? 0));

    private sealed record Comparison(Measurement Ratio, string Other)
    {
        public double Sigmas => Math.Abs(Ratio.Value - 1) / Ratio.StandardUncertainty;
    }

    /// <summary>Rates of another mode over those that the giver's law predicts for the same temperatures.</summary>
    private static IEnumerable<Comparison> Tests(ModeProfile giver, ModeProfile other)
    {
        if (DarkCurrentPredictor.FromProfile(giver.DarkCurrent!) is not { } law)
            yield break;
        foreach (DarkCurrentPoint point in other.DarkCurrent?.Points ?? [])
        {
            if ((point.TypicalRate ?? point.RateFromVariance) is not { Value: > 0 } rate)
                continue;
            DarkCurrentPrediction expected = law.At(point.Temperature);
            if (expected.Extrapolated || !(expected.Rate.Value > 0))
                continue;
            double ratio = rate.Value / expected.Rate.Value;
            double relative = double.Hypot(
                rate.StandardUncertainty / rate.Value,
                expected.Rate.StandardUncertainty / expected.Rate.Value
            );
            yield return new(
                new Measurement(ratio, ratio * relative, "", rate.Samples, "rates of two modes in electrons"),
                ModeLabel.Text(other.Settings)
            );
        }
    }

    private static DarkCurrentProfile Carried(DarkCurrentProfile dark, ModeProfile giver, double doubt) =>
        dark with
        {
            CarriedFrom = giver.Settings,
            Points =
            [
                .. dark.Points.Select(p =>
                    p with
                    {
                        TypicalRate = Wider(p.TypicalRate, doubt),
                        MeanRate = Wider(p.MeanRate, doubt),
                        RateFromVariance = Wider(p.RateFromVariance, doubt),
                        Levels = [], // in the other setting's ADU
                    }
                ),
            ],
            Models = [.. dark.Models.Select(m => Carried(m, doubt))],
            RateAtReference = Wider(dark.RateAtReference, doubt),
        };

    // The added uncertainty is common to all rates of a law: cov += doubt²·pᵢ·pⱼ over the parameters that are rates.
    private static DarkCurrentModel Carried(DarkCurrentModel model, double doubt)
    {
        double[] moved = [.. model.Parameters.Select(p => p.Unit == RateUnit ? doubt * p.Value : 0)];
        return model with
        {
            RateAtReference = Wider(model.RateAtReference, doubt),
            Parameters =
            [
                .. model.Parameters.Select(
                    (p, i) => p with { StandardUncertainty = double.Hypot(p.StandardUncertainty, moved[i]) }
                ),
            ],
            Covariance =
            [
                .. model.Covariance.Select(
                    (row, i) => (IReadOnlyList<double>)[.. row.Select((value, j) => value + moved[i] * moved[j])]
                ),
            ],
        };
    }

    // Pixels come from the giver; rows, columns and the black level belong to the amplifier and stay the taker's own.
    private static FixedPatternProfile? Carried(FixedPatternProfile? giver, FixedPatternProfile? own, double doubt) =>
        giver is null
            ? own
            : (own ?? new()) with
            {
                HotPixelCurve = giver.HotPixelCurve,
                HotPixelCurves = giver.HotPixelCurves,
                RateQuantiles = Carried(giver.RateQuantiles, doubt),
                ThermalQuantiles = Carried(giver.ThermalQuantiles, doubt),
                ThermalCurve = giver.ThermalCurve,
                GlowClasses = giver.GlowClasses,
                HotLawBend = giver.HotLawBend,
                DoublingByRate = giver.DoublingByRate,
                Flicker = giver.Flicker,
                Defects = giver.Defects,
                Places = giver.Places,
                Thresholds = giver.Thresholds,
                Glow =
                [
                    .. giver.Glow.Select(g => g with { Peak = Wider(g.Peak, doubt), Total = Wider(g.Total, doubt) }),
                ],
                ReferenceTemperature = giver.ReferenceTemperature,
            };

    private static RateQuantile[] Carried(IReadOnlyList<RateQuantile> rates, double doubt) =>
        [.. rates.Select(q => q with { Rate = Wider(q.Rate, doubt)! })];

    private static Measurement? Wider(Measurement? rate, double doubt) =>
        rate is null
            ? null
            : rate with
            {
                StandardUncertainty = double.Hypot(rate.StandardUncertainty, doubt * rate.Value),
            };
}
