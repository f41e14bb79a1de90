using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.RawCheck;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>What the user should know about the flats.</summary>
internal static class FlatFindings
{
    private const int AdvisedLevels = 6;

    public static void Report(FlatChannel[] channels, MeasuredPair[] pairs, ModeFrames mode, FindingsLog log)
    {
        Light(pairs, log);
        Scaling(mode, log);
        int levels = channels.Max(c => c.Fit?.Levels ?? 0);
        if (levels is > 0 and < AdvisedLevels)
            log.Add(
                FindingCodes.FewLightLevels,
                Severity.Warning,
                Invariant(
                    $"The gain rests on {levels} light level{(levels == 1 ? "" : "s")} of flats: a curvature of the "
                )
                    + "photon transfer would go unseen, and the gain's uncertainty allows for one; take pairs at "
                    + Invariant($"{AdvisedLevels} or more levels spread evenly up to saturation.")
            );
        if (channels.All(c => c.Saturation is null))
            log.Add(
                FindingCodes.SaturationNotReached,
                Severity.Refusal,
                "The brightest flats are not saturated, so full well, saturation level and dynamic range cannot "
                    + "be measured: add pairs at longer exposures until the picture turns evenly white."
            );
        if (channels.All(c => c.Linearity is null))
            log.Add(
                FindingCodes.LinearityNotTestable,
                Severity.Refusal,
                "Linearity cannot be tested: it needs flats at 4 or more known exposures under the same light."
            );
        FlatChannel[] off =
        [
            .. channels.Where(c =>
                c.Fit?.Intercept is { } i
                && Math.Abs(i.Value) > 5 * i.StandardUncertainty
                && Math.Abs(i.Value) > 0.02 * c.Points.Max(p => p.Variance)
            ),
        ];
        if (off.Length > 0)
            log.Add(
                FindingCodes.PhotonTransferIntercept,
                Severity.Warning,
                "A line through the flats' variances alone misses the variance without light by far more than its "
                    + "error: stray noise in the light, or frames of other settings among the flats."
            );
    }

    private static void Light(MeasuredPair[] pairs, FindingsLog log)
    {
        MeasuredPair[] flicker = [.. pairs.Where(p => p.Flickers)];
        if (flicker.Length > 0)
            log.Add(
                FindingCodes.RowFlicker,
                Severity.Note,
                Invariant(
                    $"The light of {flicker.Length} flat pair{(flicker.Length == 1 ? "" : "s")} changed from row to "
                )
                    + "row (a flickering lamp under a rolling shutter): the rows were scaled one by one, which removes "
                    + "it; a steady lamp or longer exposures are better.",
                [.. flicker.SelectMany(p => new[] { p.A.Name, p.B.Name })]
            );
        MeasuredPair[] drift = [.. pairs.Where(p => p.Drift > FlatPairing.NotableDrift && !p.Flickers)];
        if (drift.Length > 0)
            log.Add(
                FindingCodes.LightDrift,
                Severity.Note,
                Invariant(
                    $"The light drifted by up to {100 * drift.Max(p => p.Drift):0.#} % within a flat pair: this was "
                ) + "scaled out; let the lamp warm up.",
                [.. drift.SelectMany(p => new[] { p.A.Name, p.B.Name })]
            );
    }

    private static void Scaling(ModeFrames mode, FindingsLog log)
    {
        (CodePopulation Codes, string Name)[] channels =
        [
            .. mode.FlatCodes.Select((codes, c) => (CodePopulation.Count(codes, mode.CodeStep), mode.Mosaic.Names[c])),
        ];
        (CodePopulation Codes, string Name)[] scaled = [.. channels.Where(c => c.Codes.LooksScaled)];
        if (scaled.Length == 0)
            return;
        string evidence = string.Join(
            "; ",
            scaled
                .GroupBy(c => Comb(c.Codes), c => c.Name, StringComparer.Ordinal)
                .Select(g => channels.Length == 1 ? g.Key : $"{string.Join(", ", g)}: {g.Key}")
        );
        if (scaled.Length == channels.Length && AlikeCombs(scaled))
            log.Add(
                FindingCodes.MissingCodes,
                Severity.Warning,
                $"Some codes do not occur as often as their neighbours ({evidence}): the camera stretches its "
                    + "values after the converter, all alike, so its steps are larger than they look and the rounding "
                    + "noise is more than 1/12 ADU²; look for a setting that gives raw data."
            );
        else
            log.Add(
                FindingCodes.DigitalScaling,
                Severity.Warning,
                $"Some codes of {string.Join(", ", scaled.Select(c => c.Name))} occur twice as often as their "
                    + $"neighbours, or not at all ({evidence}): the camera multiplies these values after the converter "
                    + "(white balance or gain correction), so each colour has a gain of its own; look for a setting "
                    + "that gives raw data."
            );
    }

    // The mean distance between the odd codes is good to about a tenth of it.
    private static bool AlikeCombs((CodePopulation Codes, string Name)[] channels)
    {
        double[] spacings =
        [
            .. channels.Select(c =>
                c.Codes.Missing >= c.Codes.Doubled ? c.Codes.MissingSpacing : -c.Codes.DoubledSpacing
            ),
        ];
        return spacings.All(s => Math.Abs(s - spacings[0]) < 0.1 * Math.Abs(spacings[0]));
    }

    private static string Comb(CodePopulation codes) =>
        codes.Missing >= codes.Doubled
            ? Invariant(
                $"{100.0 * codes.Missing / codes.Tested:0.#} % of {codes.Tested} codes missing, one in {codes.MissingSpacing:0.#}"
            )
            : Invariant(
                $"{100.0 * codes.Doubled / codes.Tested:0.#} % of {codes.Tested} codes doubled, one in {codes.DoubledSpacing:0.#}"
            );
}
