using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>
/// A set point in words. Every number is read from the answer's own curve, so that sentence, table
/// and plot cannot disagree.
/// </summary>
internal static class SetpointWords
{
    private const double DiminishingPercent = 1,
        ShortestAdvised = 10; // s; advising shorter lights would help nobody

    internal static AnswerWords Phrase(SetpointAnswer answer) =>
        new(
            answer.Uncooled ? Uncooled(answer) : Cooled(answer),
            answer.Uncooled ? UncooledReason(answer) : CooledReason(answer),
            answer.Verdict
        )
        {
            Cautions = answer.Uncooled ? [] : Cautions.Cooling,
        };

    /// <summary>"Run at −3 °C under a dark sky, broad band; at 13 °C under …": one sentence for all skies.</summary>
    internal static string SideBySide(IReadOnlyList<SetpointAnswer> answers)
    {
        bool cooled = !answers[0].Uncooled;
        string At(SetpointAnswer answer) =>
            answer.Quantities[QuantityNames.Setpoint] is not { } setpoint ? "no temperature"
            : answer.Limit is null ? QuantityText.Degrees(setpoint.Value)
            : cooled ? $"{QuantityText.Degrees(setpoint.Value)} (then {Added(answer.At)})"
            : $"no measured temperature ({QuantityText.Degrees(setpoint.Value)}: {Added(answer.At)})";
        string all = string.Join(
            "; ",
            answers.Select((a, i) => $"{(i == 0 ? "" : cooled ? "at " : "to ")}{At(a)} under a {a.Sky.Name}")
        );
        return cooled
            ? $"Run at {all}."
            : $"Dark current adds at most {Plain.Percent(answers[0].Loss)} with a sensor up to {all}.";
    }

    /// <summary>"3 nights (−20 °C to −14 °C)".</summary>
    internal static string NightsBeyond(SetpointAnswer answer)
    {
        double[] air = [.. answer.NightsBeyond.Select(night => night.Celsius).Order()];
        string span =
            air[^1] - air[0] < 0.05
                ? QuantityText.Degrees(air[0])
                : $"{QuantityText.Degrees(air[0])} to {QuantityText.Degrees(air[^1])}";
        return $"{Plain.Whole(air.Length)} night{(air.Length == 1 ? "" : "s")} ({span})";
    }

    private static string Cooled(SetpointAnswer answer)
    {
        string at = QuantityText.Degrees(answer.At.Temperature);
        if (answer.Quantities[QuantityNames.Setpoint] is null)
            return $"Cannot tell the set point: the air is never warmer than {QuantityText.Degrees(answer.WarmestAir!.Value)}, "
                + $"far outside the measured range of {Range(answer)}; at {at}, the coldest measured, dark current adds "
                + $"{Effect(answer)}{Add(answer)}.";
        if (answer.Uncertain is { Low: double low, High: double high })
            return $"Cannot tell the set point to better than {QuantityText.Degrees(high - low)}; {at} is the best guess.";
        string run = $"Run at {at}{Why(answer)}{Outside(answer)}: dark current";
        return answer switch
        {
            { Limit: SetpointLimit.Glow } =>
                $"{run} still adds {Effect(answer)}, more than {Accepted(answer)}; cooling does not help: this is glow or a light leak.",
            { Limit: SetpointLimit.Cooler, Nights: { Count: > 1 } nights } =>
                $"{run} then adds {Effect(answer)}, more than {Accepted(answer)}; {QuantityText.Degrees(nights[0].Sensor)} "
                    + $"would {(Keeps(answer, nights[0]) ? "do" : "do better")}, and is within reach on "
                    + $"{Plain.Whole(nights[0].Nights)} of {Plain.Whole(answer.Ambient.Count)} nights.",
            { Limit: SetpointLimit.Range } =>
                $"{run} adds {Effect(answer)} there, more than {Accepted(answer)}{Add(answer)}.",
            { Limit: not null } => $"{run} then adds {Effect(answer)}, more than {Accepted(answer)}.",
            { Bound: SetpointBound.Air } => $"{run} then adds {Effect(answer)}, and no cooling is needed.",
            { Bound: SetpointBound.WarmestMeasured } => $"{run} then adds {Effect(answer)}; a warmer sensor may do.",
            _ => Deciding(answer.At) <= DiminishingPercent
                ? $"{run} then adds {Effect(answer)}; cooling further gains less than 1 %."
                : $"{run} then adds {Effect(answer)}; cooling further gains no more than that.",
        };
    }

    private static string CooledReason(SetpointAnswer answer)
    {
        SetpointPoint at = answer.At;
        string below =
            answer.Limit is null
            && answer.Quantities[QuantityNames.DiminishingReturns] is { } point
            && point.Value < at.Temperature
                ? $"; cooling below {QuantityText.Degrees(Math.Floor(point.Value))} gains less than 1 %"
                : "";
        return $"At {QuantityText.Degrees(at.Temperature)} dark current adds {AddedNoise.Of(at.ExtraTypical)} to the noise of a "
            + $"{Plain.Seconds(answer.ExposureSeconds)} light in the typical pixel"
            + (
                at.ExtraAtShare is double share
                    ? $" and {AddedNoise.AtMost(share)} in {Plain.Percent(answer.Share)} of the pixels"
                    : ""
            )
            + $", under {SkyFields.Named(answer.Sky)}{below}."
            + Cure(answer);
    }

    private static string Uncooled(SetpointAnswer answer)
    {
        string air = QuantityText.Degrees(answer.At.Temperature - answer.SelfHeating);
        AmbientCost warmest = answer.Ambient.MaxBy(row => row.Ambient)!;
        string measured = answer.Bound switch
        {
            SetpointBound.ColdestMeasured => ", the coldest measured",
            SetpointBound.WarmestMeasured => ", the warmest measured",
            _ => "",
        };
        string limit = answer.Limit switch
        {
            null => $"Up to {air} outside{measured}, dark current adds {Effect(answer)}",
            SetpointLimit.Glow =>
                $"Even at {air} outside{measured}, dark current adds {Effect(answer)}, more than {Accepted(answer)}, "
                    + "and colder nights do not help: this is glow or a light leak",
            _ => $"Even at {air} outside{measured}, dark current adds {Effect(answer)}, more than {Accepted(answer)}",
        };
        double worst = Math.Max(warmest.ExtraTypical, warmest.ExtraAtShare ?? 0);
        bool silent = answer.WarmestAir is null && warmest.Extrapolated;
        string there = silent
            ? ""
            : $"; at {QuantityText.Degrees(warmest.Ambient)} it adds {AddedNoise.Of(worst)}"
                + (warmest.Extrapolated ? $", extrapolated (measured: {Range(answer)})" : "");
        string beyond = answer.NightsBeyond.Count > 0 ? $"; cannot tell for {NightsBeyond(answer)}" : "";
        return limit + there + Nights(answer) + beyond + ".";
    }

    /// <summary>How many of the given nights stay within the loss.</summary>
    private static string Nights(SetpointAnswer answer)
    {
        if (answer.Nights.Count == 0)
            return "";
        int within = answer.Ambient.Count(night => night.WithinLoss);
        string all = Plain.Whole(answer.Ambient.Count);
        return within == 0
            ? $"; none of your {all} nights is cold enough"
            : $"; {Plain.Whole(within)} of your {all} nights {(within == 1 ? "is" : "are")} cold enough";
    }

    private static string UncooledReason(SetpointAnswer answer) =>
        (
            answer.SelfHeating == 0
                ? "Without a cooler the sensor follows the air"
                : $"Without a cooler the sensor runs {QuantityText.Degrees(answer.SelfHeating)} above the air"
        )
        + "; the loss is that of "
        + $"{(answer.At.ExtraAtShare is null ? "the typical pixel" : Plain.Percent(answer.Share) + " of the pixels")} "
        + $"in a light of {Plain.Seconds(answer.ExposureSeconds)} under {SkyFields.Named(answer.Sky)}."
        + Cure(answer);

    /// <summary>What to do when the accepted loss cannot be met.</summary>
    private static string Cure(SetpointAnswer answer)
    {
        if (answer.Bound == SetpointBound.WarmestMeasured && answer.Settling.Count > 0)
            return $" To find out about a warmer sensor{Add(answer).Replace("; ", ", ", StringComparison.Ordinal)}.";
        if (answer.Limit is null || answer.Quantities[QuantityNames.Setpoint] is null)
            return "";
        string law = answer is { Limit: SetpointLimit.Range, LawAsks: double asks }
            ? $" Extrapolated, {QuantityText.Degrees(asks)} would do."
            : "";
        string shorter = answer.ExposureWithinLoss is double seconds and >= ShortestAdvised
            ? $"expose no longer than {Plain.Duration(Math.Floor(seconds))}, "
            : "";
        return $"{law} What helps at {QuantityText.Degrees(answer.At.Temperature)}: {shorter}dither and reject outliers, and "
            + "take more darks.";
    }

    /// <summary>"; add 12 darks of 30, 100 and 300 s at −28 °C (30 min)".</summary>
    private static string Add(SetpointAnswer answer) =>
        answer.Settling.Count > 0 ? $"; add {SettlingWords.Phrase(answer.Settling)}" : "";

    private static string Why(SetpointAnswer answer) =>
        answer.Bound switch
        {
            SetpointBound.Air => ", no warmer than the air",
            SetpointBound.Cooler =>
                $", the coldest the cooler holds{(answer.Nights.Count > 0 ? " on every night" : "")} "
                    + $"with {QuantityText.Degrees(answer.Margin)} in reserve",
            SetpointBound.ColdestMeasured => ", the coldest measured",
            SetpointBound.WarmestMeasured => ", the warmest measured",
            _ => "",
        };

    private static string Outside(SetpointAnswer answer) =>
        answer.At.Extrapolated ? $", outside the measured range of {Range(answer)} and so extrapolated" : "";

    private static string Range(SetpointAnswer answer) =>
        $"{QuantityText.Degrees(answer.MeasuredFrom)} to {QuantityText.Degrees(answer.MeasuredTo)}";

    private static string Accepted(SetpointAnswer answer) => $"the {Plain.Percent(answer.Loss)} you accept";

    /// <summary>"at most 4.91 % to the noise of a light in 99 % of the pixels", as the curve says.</summary>
    private static string Effect(SetpointAnswer answer) =>
        answer.At.ExtraAtShare is null
            ? $"{AddedNoise.Of(answer.At.ExtraTypical)} to the noise of a light in the typical pixel"
            : $"{AddedNoise.AtMost(Deciding(answer.At))} to the noise of a light in {Plain.Percent(answer.Share)} of the pixels";

    private static string Added(SetpointPoint at) =>
        at.ExtraAtShare is null ? AddedNoise.Of(at.ExtraTypical) : AddedNoise.AtMost(Deciding(at));

    private static bool Keeps(SetpointAnswer answer, NightsAtTemperature night) =>
        Math.Max(night.ExtraTypical, night.ExtraAtShare ?? 0) <= 100 * answer.Loss + 1e-7;

    private static double Deciding(SetpointPoint at) => Math.Max(at.ExtraTypical, at.ExtraAtShare ?? 0);
}
