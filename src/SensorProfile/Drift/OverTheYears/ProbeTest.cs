using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Tells a drifted temperature probe from a real change of the dark current.</summary>
internal static class ProbeTest
{
    private const double Sure = 2.5758293035489; // 99 % two-sided

    /// <summary>Judges one mode.</summary>
    /// <param name="mode">First against last.</param>
    /// <param name="dark">Change of the typical dark rate.</param>
    /// <param name="match">Matched hot pixels; null without maps.</param>
    /// <param name="celsius">Temperature of the dark rates.</param>
    /// <param name="doublingOf">Doubling temperature of a pixel from the maps, °C; NaN when unknown.</param>
    /// <param name="options">Supplies the repeatability of a session's temperature.</param>
    /// <param name="shift">Temperature step by which the last maps were moved to match the first, °C; the uncertainty
    /// of the laws makes it uncertain.</param>
    public static ProbeOrAgeing Judge(
        MatchedMode mode,
        DriftChange dark,
        HotPixelMatch? match,
        double celsius,
        Func<int, double> doublingOf,
        DriftOptions options,
        double shift = 0
    )
    {
        ModeProfile before = mode.Mode(0),
            now = mode.Mode(mode.Members.Count - 1);
        double typical = DoublingAt(now, celsius);
        double gain = double.Hypot(Relative(before.Gain), Relative(now.Gain)),
            nightly = Math.Sqrt(2) * options.TemperatureRepeatability;
        double scale = typical / Math.Log(2),
            lawDoubt = HotPixelStep.DoublingDoubt * Math.Abs(shift);
        double all =
            scale
            * double.Hypot(
                dark.From.StandardUncertainty / dark.From.Value,
                dark.To.StandardUncertainty / dark.To.Value
            );
        // the hot pixels share the session's gain and temperature
        double shared = double.Hypot(nightly, scale * gain);
        double own = Math.Sqrt(Math.Max(all * all - shared * shared, 0.01 * all * all));
        var step = new Measurement(
            scale * Math.Log(dark.To.Value / dark.From.Value),
            all,
            "°C",
            dark.To.Samples,
            "ΔT₂·log₂ of the ratio of the typical rates"
        );
        HotPixelStep? hot = match is null ? null : HotPixelStep.Measure(match, before, typical, doublingOf);
        if (hot is not { } h)
            return new ProbeOrAgeing(
                mode.Name,
                dark.Changed ? ProbeVerdict.CannotTell : ProbeVerdict.None,
                step,
                null,
                0,
                match is null ? ProbeGap.NoMaps : ProbeGap.FewHotPixels
            );
        var hotStep = new Measurement(
            h.Celsius,
            double.Hypot(double.Hypot(h.OwnError, lawDoubt), shared),
            "°C",
            h.Pixels,
            "median ΔT₂·log₂ of the ratios of the hot pixels, each by its own law"
        );
        bool probeMoved = Math.Abs(h.Celsius) > Sure * hotStep.StandardUncertainty;
        // neither step is more certain than the doubling temperatures behind it
        double ofLaws = HotPixelStep.DoublingDoubt * Math.Max(Math.Abs(step.Value), Math.Abs(h.Celsius));
        bool apart =
            Math.Abs(step.Value - h.Celsius)
            > Sure * Math.Sqrt(own * own + h.OwnError * h.OwnError + lawDoubt * lawDoubt + ofLaws * ofLaws);
        return new ProbeOrAgeing(mode.Name, Judge(dark.Changed, probeMoved, apart), step, hotStep, h.Pixels, null);
    }

    private static ProbeVerdict Judge(bool changed, bool probeMoved, bool apart) =>
        (changed, probeMoved, apart) switch
        {
            (_, true, false) => ProbeVerdict.Probe,
            (_, true, true) => ProbeVerdict.Both,
            (true, false, true) => ProbeVerdict.Ageing,
            (true, false, false) => ProbeVerdict.CannotTell,
            _ => ProbeVerdict.None,
        };

    /// <summary>
    /// The verdict that agrees with the change left in the dark current after correcting for the probe.
    /// </summary>
    /// <param name="judged">Verdict from the steps alone.</param>
    /// <param name="darkChanged">Whether the corrected dark current changed, judged over all tests of the
    /// answer.</param>
    public static ProbeOrAgeing Settled(ProbeOrAgeing judged, bool darkChanged) =>
        (judged.Verdict, darkChanged) switch
        {
            (ProbeVerdict.Both, false) => judged with { Verdict = ProbeVerdict.Probe },
            (ProbeVerdict.Probe, true) => judged with { Verdict = ProbeVerdict.Both },
            _ => judged,
        };

    internal static double DoublingAt(ModeProfile mode, double celsius) =>
        DarkCurrentPredictor.FromProfile(mode.DarkCurrent!) is { } law
        && law.At(celsius).DoublingTemperature.Value is > 0 and < 100 and double doubling
            ? doubling
            : 6;

    private static double Relative(Measurement? m) => m is { Value: not 0 } ? m.StandardUncertainty / m.Value : 0;
}
