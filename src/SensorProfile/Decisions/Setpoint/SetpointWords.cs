using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>Turns a solved set point into advice, within what the cooler holds and what the profile covers.</summary>
internal static class SetpointWords
{
    internal static SetpointAnswer Cooled(
        SensorReader reader,
        SetpointQuestion question,
        SkyRate sky,
        SetpointSolution solution,
        List<Finding> findings,
        double widest
    )
    {
        (double low, double high) = (
            reader.Range.Low - Refuse.ExtrapolationCelsius,
            reader.Range.High + Refuse.ExtrapolationCelsius
        );
        double wanted = Wanted(solution, low, high, question, findings);
        IReadOnlyList<AmbientCost> table =
        [
            .. question.Ambient.Select(a => Held(reader, question, solution, a, wanted)),
        ];
        double setpoint = table.Count > 0 ? table.Max(row => row.Sensor) : wanted;
        findings.AddRange(Guard.Temperature(reader, setpoint, "set point"));
        findings.AddRange(FullPixels.Findings(reader, sky.Rate.Value, question.ExposureSeconds, setpoint));
        findings.AddRange(FlickerRanks.Findings(reader, sky.Rate.Value, question.ExposureSeconds, setpoint));
        bool limited = setpoint > wanted,
            uncertain = solution.WantedSpread is { Solved: > 0 } s && s.High - s.Low > widest;
        if (question.Ambient.Count > 0 && question.MaximumDifference is null)
            findings.Add(
                new Finding(
                    "cooler-unknown",
                    Severity.Note,
                    "The reach of the cooler was not given, so whether it holds this temperature was not checked: "
                        + "give --max-delta."
                )
            );
        if (uncertain)
            findings.Add(
                new Finding(
                    "setpoint-uncertain",
                    Severity.Warning,
                    "The measurements leave the set point anywhere between "
                        + $"{Said.Celsius(solution.WantedSpread.Low!.Value)} and "
                        + $"{Said.Celsius(solution.WantedSpread.High!.Value)}: add darks at one more temperature, each "
                        + "with at least 8 frames."
                )
            );
        IReadOnlyList<NightsAtTemperature> nights = NightsSummary.Cooled(question, solution, wanted, setpoint);
        double extra = solution.Extra(setpoint);
        QuantityList numbers = Quantities(question, solution, setpoint, reader, low, high);
        return Finish(question, sky, solution, findings, reader) with
        {
            Sentence = uncertain
                ? "Cannot tell the set point to better than "
                    + $"{Said.Celsius(solution.WantedSpread.High!.Value - solution.WantedSpread.Low!.Value)}; "
                    + $"{Said.Celsius(setpoint)} is the best guess."
                : Sentence(question, setpoint, extra, limited, nights),
            Reason =
                $"At {Said.Celsius(setpoint)} dark current adds {Said.Percent(solution.ExtraTypical(setpoint))} to "
                + $"the noise of a {Said.Seconds(question.ExposureSeconds)} light in the typical pixel"
                + (
                    solution.ExtraAtShare(setpoint) is double share
                        ? $" and {Said.AtMost(share)} in {Said.Percent(question.Share)} of the pixels"
                        : ""
                )
                + $", under a sky of {Said.Rate(sky.Rate.Value)}"
                + (
                    numbers.Quantities["diminishingReturns"] is { } point && point.Value < setpoint
                        ? $"; below {Said.Celsius(Math.Floor(point.Value))} colder gains less than 1 %."
                        : "."
                ),
            Verdict =
                uncertain ? Answer.CannotTell
                : limited ? "limited"
                : "holds",
            Quantities = numbers.Quantities,
            Intervals = numbers.Intervals,
            Noise = LightNoise.Of(reader, sky, question.ExposureSeconds, setpoint, question.Share),
            Ambient = table,
            Nights = nights,
            ColdestHeld =
                question.MaximumDifference is double reach && question.Ambient.Count > 0
                    ? question.Ambient.Max(a => NightsSummary.ColdestHeld(a.Celsius, reach, question.Margin))
                    : null,
            Cautions = Cautions.Cooling,
        };
    }

    internal static SetpointAnswer Uncooled(
        SensorReader reader,
        SetpointQuestion question,
        SkyRate sky,
        SetpointSolution solution,
        List<Finding> findings
    )
    {
        (double low, double high) = (
            reader.Range.Low - Refuse.ExtrapolationCelsius,
            reader.Range.High + Refuse.ExtrapolationCelsius
        );
        IReadOnlyList<AmbientTemperature> ambient =
            question.Ambient.Count > 0
                ? question.Ambient
                : Usual(low - question.SelfHeating, high - question.SelfHeating);
        if (question.Ambient.Count > 0)
            findings.AddRange(Outside(reader, [.. ambient.Select(a => a.Celsius + question.SelfHeating)]));
        AmbientCost[] table =
        [
            .. ambient.Select(a => Cost(reader, question, solution, a, a.Celsius + question.SelfHeating)),
        ];
        AmbientCost warmest = table.MaxBy(row => row.Ambient)!;
        findings.AddRange(FullPixels.Findings(reader, sky.Rate.Value, question.ExposureSeconds, warmest.Sensor));
        findings.AddRange(FlickerRanks.Findings(reader, sky.Rate.Value, question.ExposureSeconds, warmest.Sensor));
        double limit = Wanted(solution, low, high, question, findings) - question.SelfHeating;
        double worst =
            (warmest.ExtraAtShare is double share ? Math.Max(share, warmest.ExtraTypical) : warmest.ExtraTypical) / 100;
        QuantityList numbers = Quantities(question, solution, limit + question.SelfHeating, reader, low, high);
        return Finish(question, sky, solution, findings, reader) with
        {
            Sentence = UncooledSentence(question, limit, warmest, worst),
            Reason =
                (
                    question.SelfHeating == 0
                        ? "Without a cooler the sensor follows the air (--self-heating says by how much it runs warmer)"
                        : $"Without a cooler the sensor runs {Said.Celsius(question.SelfHeating)} above the air"
                )
                + "; the loss is that of "
                + $"{(reader.Best.Rates is null ? "the typical pixel" : Said.Percent(question.Share) + " of the pixels")} "
                + $"in a light of {Said.Seconds(question.ExposureSeconds)} under a sky of "
                + $"{Said.Rate(sky.Rate.Value)}.",
            Verdict = "uncooled",
            Uncooled = true,
            Quantities = numbers.Quantities,
            Intervals = numbers.Intervals,
            Noise = LightNoise.Of(reader, sky, question.ExposureSeconds, limit + question.SelfHeating, question.Share),
            Ambient = table,
            Nights = NightsSummary.Uncooled(question, solution),
        };
    }

    private static string UncooledSentence(SetpointQuestion question, double limit, AmbientCost warmest, double worst)
    {
        string usual =
            $"Up to {Said.Celsius(limit)} outside, dark current adds at most {Said.Percent(question.Loss)} to the "
            + $"noise; at {Said.Celsius(warmest.Ambient)} it adds {Said.Percent(worst)}";
        if (question.Ambient.Count < 2)
            return usual + ".";
        int within = question.Ambient.Count(a => a.Celsius <= limit);
        string nights = Said.Whole(question.Ambient.Count);
        return within == 0
            ? $"{usual}; none of your {nights} nights is cold enough."
            : $"{usual}; {Said.Whole(within)} of your {nights} nights are cold enough.";
    }

    /// <summary>
    /// One finding for all temperatures outside the measured range; a refusal for the first that lies too far outside.
    /// </summary>
    private static IEnumerable<Finding> Outside(SensorReader reader, double[] sensor)
    {
        Finding[] each = [.. sensor.SelectMany(t => Guard.Temperature(reader, t, "sensor temperature"))];
        if (each.Length == 0)
            return [];
        double[] beyond = [.. sensor.Where(t => t < reader.Range.Low - 0.05 || t > reader.Range.High + 0.05)];
        string which =
            beyond.Length == 1
                ? $"A sensor at {Said.Celsius(beyond[0])} is"
                : $"On {Said.Whole(beyond.Length)} of the nights, down to {Said.Celsius(beyond.Min())} and up to "
                    + $"{Said.Celsius(beyond.Max())}, the sensor is";
        return
        [
            new Finding(
                "extrapolated",
                Severity.Warning,
                $"{which} outside the measured range, {Said.Celsius(reader.Range.Low)} to "
                    + $"{Said.Celsius(reader.Range.High)}; the answer there rests on the law, not on darks."
            ),
        ];
    }

    /// <summary>"Run at −3 °C under a dark sky, broad band; at 13 °C under …": one sentence for all skies.</summary>
    internal static string SideBySide(IReadOnlyList<SetpointAnswer> answers, bool cooled)
    {
        string At(SetpointAnswer answer) =>
            answer.Quantities["setpoint"] is { } setpoint ? Said.Celsius(setpoint.Value) : "no temperature";
        string all = string.Join(
            "; ",
            answers.Select((a, i) => $"{(i == 0 ? "" : cooled ? "at " : "to ")}{At(a)} under a {a.Sky.Name}")
        );
        return cooled
            ? $"Run at {all} (your own sky: --sky)."
            : $"Dark current adds at most {Said.Percent(answers[0].Loss)} with a sensor up to {all} (your own sky: "
                + "--sky).";
    }

    private static SetpointAnswer Finish(
        SetpointQuestion question,
        SkyRate sky,
        SetpointSolution solution,
        List<Finding> findings,
        SensorReader reader
    ) =>
        new()
        {
            Sentence = "",
            Reason = "",
            Verdict = "",
            Sky = sky,
            ExposureSeconds = question.ExposureSeconds,
            Loss = question.Loss,
            Share = question.Share,
            MeasuredFrom = reader.Range.Low,
            MeasuredTo = reader.Range.High,
            Curve = solution.Curve(),
            Findings = findings,
            RulesOfThumb = [.. RulesOfThumb.OfSetpoint(reader, question.Cooled)],
        };

    /// <summary>
    /// The temperature that is asked of the cooler, whole degrees, rounded to the cold side, kept inside what the
    /// profile covers.
    /// </summary>
    private static double Wanted(
        SetpointSolution solution,
        double low,
        double high,
        SetpointQuestion question,
        List<Finding> findings
    )
    {
        double wanted = solution.Wanted ?? double.NegativeInfinity;
        if (wanted >= low && wanted <= high)
            return Math.Floor(wanted + 1e-9);
        if (wanted > high)
        {
            findings.Add(
                new Finding(
                    "warmer-than-profile",
                    Severity.Note,
                    $"Even at {Said.Celsius(Math.Floor(high))} the loss stays below {Said.Percent(question.Loss)}; "
                        + "the profile does not reach warmer."
                )
            );
            return Math.Floor(high);
        }
        findings.Add(
            new Finding(
                "colder-than-profile",
                Severity.Warning,
                $"Even at {Said.Celsius(Math.Ceiling(low))} dark current adds more than "
                    + $"{Said.Percent(question.Loss)} for {Said.Percent(question.Share)} of the pixels, and the profile "
                    + "does not reach colder: dither and reject outliers, or add colder darks."
            )
        );
        return Math.Ceiling(low);
    }

    private static AmbientCost Held(
        SensorReader reader,
        SetpointQuestion question,
        SetpointSolution solution,
        AmbientTemperature ambient,
        double wanted
    )
    {
        double coldest = question.MaximumDifference is double d
            ? NightsSummary.ColdestHeld(ambient.Celsius, d, question.Margin)
            : double.NegativeInfinity;
        return Cost(reader, question, solution, ambient, Math.Max(wanted, coldest));
    }

    private static AmbientCost Cost(
        SensorReader reader,
        SetpointQuestion question,
        SetpointSolution solution,
        AmbientTemperature ambient,
        double sensor
    ) =>
        new(
            ambient.Label,
            ambient.Celsius,
            sensor,
            100 * solution.ExtraTypical(sensor),
            100 * solution.ExtraAtShare(sensor),
            solution.Extra(sensor) <= question.Loss + 1e-12,
            sensor < reader.Range.Low - 0.05 || sensor > reader.Range.High + 0.05
        );

    private static AmbientTemperature[] Usual(double low, double high)
    {
        AmbientTemperature[] usual =
        [
            .. Enumerable
                .Range(-3, 10)
                .Select(i => 5.0 * i)
                .Where(t => t >= low && t <= high)
                .Select(t => new AmbientTemperature(Said.Celsius(t), t)),
        ];
        return usual.Length > 0 ? usual : [new AmbientTemperature(Said.Celsius(low), low)];
    }

    private static string Sentence(
        SetpointQuestion question,
        double setpoint,
        double extra,
        bool limited,
        IReadOnlyList<NightsAtTemperature> nights
    )
    {
        string night = nights.Count > 0 ? " on every night" : "";
        string run = limited
            ? $"Run at {Said.Celsius(setpoint)}, the coldest the cooler holds{night} with "
                + $"{Said.Celsius(question.Margin)} in reserve"
            : $"Run at {Said.Celsius(setpoint)}";
        if (limited && nights.Count > 1)
            return $"{run}: dark current then adds at most {Said.Percent(extra)}; {Said.Celsius(nights[0].Sensor)} "
                + $"would do, and is within reach on {Said.Whole(nights[0].Nights)} of "
                + $"{Said.Whole(question.Ambient.Count)} nights.";
        return extra <= SetpointAdvice.DiminishingShare
            ? run + ": colder gains less than 1 %."
            : run
                + $": dark current then adds at most {Said.Percent(extra)} to the noise of a light, and colder gains no more than that.";
    }

    private static QuantityList Quantities(
        SetpointQuestion question,
        SetpointSolution solution,
        double setpoint,
        SensorReader reader,
        double low,
        double high
    )
    {
        var list = new QuantityList();
        string method =
            $"noise of a light raised by {Said.Percent(question.Loss)}, {reader.Mode.DarkCurrent!.Selected} law, "
            + "uncertainties drawn";
        double? Covered(double? value) => value >= low && value <= high ? value : null;
        list.Add(
            "setpoint",
            setpoint,
            "°C",
            method + "; whole degrees, within the cooler's reach",
            new Propagation.Spread(solution.WantedSpread.StandardDeviation, null, null, 0)
        );
        list.Add("setpointTypical", Covered(solution.Typical), "°C", method, solution.TypicalSpread);
        list.Add(
            "setpoint99",
            Covered(solution.AtShare),
            "°C",
            $"{method}; {Said.Percent(question.Share)} of the pixels",
            solution.ShareSpread
        );
        list.Add(
            "diminishingReturns",
            Covered(solution.Diminishing),
            "°C",
            "any colder temperature gains less than 1 %",
            solution.DiminishingSpread
        );
        list.Add("extraTypical", 100 * solution.ExtraTypical(setpoint), "%", "noise added at the set point");
        list.Add(
            "extra99",
            100 * solution.ExtraAtShare(setpoint),
            "%",
            $"noise added at the set point; {Said.Percent(question.Share)} of the pixels"
        );
        return list;
    }
}
