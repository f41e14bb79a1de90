using SensorProfile.Pixels;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>What the user should know about the flats.</summary>
internal static class FlatFindings
{
    private const int AdvisedLevels = 6;

    public static void Report(FlatChannel[] channels, MeasuredPair[] pairs, ModeFrames mode, Rejections rejections)
    {
        Light(pairs, rejections);
        Scaling(mode, rejections);
        int levels = channels.Max(c => c.Fit?.Levels ?? 0);
        if (levels is > 0 and < AdvisedLevels)
            rejections.Add(Codes.OneLightLevel, Severity.Warning, Invariant(
                $"The gain rests on {levels} light level{(levels == 1 ? "" : "s")} of flats: a curvature of the photon transfer would go unseen; take pairs at {AdvisedLevels} or more levels spread evenly up to saturation."));
        if (channels.All(c => c.Saturation is null))
            rejections.Add(Codes.NotSaturated, Severity.Refusal, "The brightest flats are not saturated, so full well, saturation level and dynamic range cannot be measured: add pairs at longer exposures until the picture turns evenly white.");
        if (channels.All(c => c.Linearity is null))
            rejections.Add(Codes.NotLinearityTestable, Severity.Refusal, "Linearity cannot be tested: it needs flats at 4 or more known exposures under the same light.");
        FlatChannel[] off = [.. channels.Where(c => c.Fit?.Intercept is { } i && Math.Abs(i.Value) > 5 * i.StandardUncertainty && Math.Abs(i.Value) > 0.02 * c.Points.Max(p => p.Variance))];
        if (off.Length > 0)
            rejections.Add(Codes.InterceptOff, Severity.Warning, "A line through the flats' variances alone misses the variance without light by far more than its error: stray noise in the light, or frames of other settings among the flats.");
    }

    private static void Light(MeasuredPair[] pairs, Rejections rejections)
    {
        MeasuredPair[] flicker = [.. pairs.Where(p => p.Flickers)];
        if (flicker.Length > 0)
            rejections.Add(Codes.RowFlicker, Severity.Note, Invariant(
                $"The light of {flicker.Length} flat pair{(flicker.Length == 1 ? "" : "s")} changed from row to row (a flickering lamp under a rolling shutter): the rows were scaled one by one, which takes it out; a steady lamp or longer exposures are better."),
                [.. flicker.SelectMany(p => new[] { p.A.Name, p.B.Name })]);
        MeasuredPair[] drift = [.. pairs.Where(p => p.Drift > FlatPairing.NotableDrift && !p.Flickers)];
        if (drift.Length > 0)
            rejections.Add(Codes.LightDrift, Severity.Note, Invariant(
                $"The light drifted by up to {100 * drift.Max(p => p.Drift):0.#} % inside a flat pair: it was scaled away; let the lamp warm up."), [.. drift.SelectMany(p => new[] { p.A.Name, p.B.Name })]);
    }

    private static void Scaling(ModeFrames mode, Rejections rejections)
    {
        string[] scaled = [.. mode.FlatCodes.Select((codes, c) => (Codes: codes, Name: mode.Mosaic.Names[c]))
            .Where(c => CodePopulation.Of(c.Codes, mode.CodeStep).LooksScaled).Select(c => c.Name)];
        if (scaled.Length > 0)
            rejections.Add(Codes.DigitalScaling, Severity.Warning, $"Some codes of {string.Join(", ", scaled)} occur twice as often as their neighbours, or not at all: the camera multiplies these values after the converter (white balance or gain correction); look for a setting that gives raw data.");
    }
}
