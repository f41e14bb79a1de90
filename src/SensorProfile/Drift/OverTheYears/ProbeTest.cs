using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Tells a temperature probe that drifted from dark current that did.</summary>
internal static class ProbeTest
{
    private const double Sure = 2.5758293035489; // 99 % two-sided

    /// <summary>Judges one mode.</summary>
    /// <param name="mode">First against last.</param>
    /// <param name="dark">Change of the typical dark rate.</param>
    /// <param name="match">Matched hot pixels; null without maps.</param>
    /// <param name="celsius">Temperature of the dark rates.</param>
    /// <param name="doublingOf">Doubling temperature of a pixel from the maps, °C; not a number when unknown.</param>
    /// <param name="options">Repeatability.</param>
    /// <param name="shift">°C by which the last maps were moved to the first's temperature; the laws' own doubt makes a
    /// doubt of the step.</param>
    public static ProbeOrAgeing Of(
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
        // the hot pixels share the session's gain and its temperature
        double shared = double.Hypot(nightly, scale * gain);
        double own = Math.Sqrt(Math.Max(all * all - shared * shared, 0.01 * all * all));
        var step = new Measurement(
            scale * Math.Log(dark.To.Value / dark.From.Value),
            all,
            "°C",
            dark.To.Samples,
            "ΔT₂·log₂ of the ratio of the typical rates"
        );
        HotPixelStep? hot = match is null ? null : HotPixelStep.Of(match, before, typical, doublingOf);
        if (hot is not { } h)
            return dark.Changed
                ? Verdict(
                    mode,
                    ProbeVerdict.CannotTell,
                    step,
                    null,
                    0,
                    match is null
                        ? "Whether the sensor or its temperature probe changed cannot be told without the maps of "
                            + "both profiles, whose hot pixels would show it: keep the folder 'maps' beside each "
                            + "profile, or characterise the old frames again."
                        : "Whether the sensor or its temperature probe changed cannot be told: too few hot pixels "
                            + "were seen well in both profiles."
                )
                : Verdict(
                    mode,
                    ProbeVerdict.None,
                    step,
                    null,
                    0,
                    "The dark current has not changed beyond its errors."
                );
        var hotStep = new Measurement(
            h.Celsius,
            double.Hypot(double.Hypot(h.OwnError, lawDoubt), shared),
            "°C",
            h.Pixels,
            "median ΔT₂·log₂ of the ratios of the hot pixels, each by its own law"
        );
        bool probeMoved = Math.Abs(h.Celsius) > Sure * hotStep.StandardUncertainty;
        // both steps are no surer than the doubling temperatures they are made of
        double ofLaws = HotPixelStep.DoublingDoubt * Math.Max(Math.Abs(step.Value), Math.Abs(h.Celsius));
        bool apart =
            Math.Abs(step.Value - h.Celsius)
            > Sure * Math.Sqrt(own * own + h.OwnError * h.OwnError + lawDoubt * lawDoubt + ofLaws * ofLaws);
        return Judge(mode, dark.Changed, probeMoved, apart, step, hotStep, h.Pixels);
    }

    private static ProbeOrAgeing Judge(
        MatchedMode mode,
        bool changed,
        bool probeMoved,
        bool apart,
        Measurement step,
        Measurement hot,
        int count
    ) =>
        (changed, probeMoved, apart) switch
        {
            (_, true, false) => Verdict(mode, ProbeVerdict.Probe, step, hot, count, Alone(hot)),
            (_, true, true) => Verdict(mode, ProbeVerdict.Both, step, hot, count, Together(step, hot)),
            (true, false, true) => Verdict(
                mode,
                ProbeVerdict.Ageing,
                step,
                hot,
                count,
                "The typical pixel changed and the hot pixels did not: the dark current itself changed, the temperature probe did not."
            ),
            (true, false, false) => Verdict(
                mode,
                ProbeVerdict.CannotTell,
                step,
                hot,
                count,
                "The dark current changed, but the hot pixels fit both a probe that drifted and one that did not: "
                    + "more frames or warmer darks would tell."
            ),
            _ => Verdict(
                mode,
                ProbeVerdict.None,
                step,
                hot,
                count,
                "Neither the dark current nor the temperature probe has changed beyond the errors."
            ),
        };

    /// <summary>
    /// The verdict that goes with what is left of the dark current once the probe's error is taken out.
    /// </summary>
    /// <param name="judged">From the steps alone.</param>
    /// <param name="darkChanged">Whether the corrected dark current changed, all tests of the answer together.</param>
    public static ProbeOrAgeing Settled(ProbeOrAgeing judged, bool darkChanged) =>
        (judged.Verdict, darkChanged) switch
        {
            (ProbeVerdict.Both, false) => judged with
            {
                Verdict = ProbeVerdict.Probe,
                Sentence = Alone(judged.StepOfHotPixels!),
            },
            (ProbeVerdict.Probe, true) => judged with
            {
                Verdict = ProbeVerdict.Both,
                Sentence = Together(judged.StepOfTypical!, judged.StepOfHotPixels!),
            },
            _ => judged,
        };

    private static string Alone(Measurement hot) =>
        $"The pixels, hot ones too, changed as if the sensor were {Felt(hot)} at the same reading: the "
        + "temperature probe drifted, and the dark current shows no change of its own beyond the errors. "
        + $"Set the cooler {Setting(hot)} to come back to the old darks.";

    private static string Together(Measurement step, Measurement hot) =>
        $"At the same reading the hot pixels changed as if the sensor were {Felt(hot)}, the typical pixel "
        + $"as if it were {Felt(step)}: most likely the temperature probe drifted and the dark current "
        + "changed as well; hot pixels that aged too would look the same.";

    /// <summary>"0.98 °C higher": what brings the sensor back to its old temperature.</summary>
    public static string Setting(Measurement hot) =>
        $"{Said.Celsius(Math.Abs(hot.Value))} {(hot.Value > 0 ? "lower" : "higher")}";

    /// <summary>"0.3 °C colder".</summary>
    private static string Felt(Measurement step) =>
        $"{Said.Celsius(Math.Abs(step.Value))} {(step.Value > 0 ? "warmer" : "colder")}";

    internal static double DoublingAt(ModeProfile mode, double celsius) =>
        DarkCurrentPredictor.FromProfile(mode.DarkCurrent!) is { } law
        && law.At(celsius).DoublingTemperature.Value is > 0 and < 100 and double doubling
            ? doubling
            : 6;

    private static double Relative(Measurement? m) => m is { Value: not 0 } ? m.StandardUncertainty / m.Value : 0;

    private static ProbeOrAgeing Verdict(
        MatchedMode mode,
        ProbeVerdict verdict,
        Measurement step,
        Measurement? hot,
        int count,
        string sentence
    ) => new(mode.Name, verdict, step, hot, count, sentence);
}
