using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>What the weather costs a camera without a cooler.</summary>
internal static class UncooledSetpoint
{
    internal static SetpointAnswer Answer(
        SensorReader reader,
        SetpointQuestion question,
        SkyRate sky,
        SetpointSolution solution,
        List<Finding> findings
    )
    {
        bool given = question.Ambient.Count > 0;
        IReadOnlyList<AmbientTemperature> ambient = given ? question.Ambient : Usual(reader, question);
        if (given)
            findings.AddRange(Outside(reader, [.. ambient.Select(a => a.Celsius + question.SelfHeating)]));
        AmbientCost[] table =
        [
            .. ambient.Select(a => SetpointFacts.Cost(reader, question, solution, a, a.Celsius + question.SelfHeating)),
        ];
        double warmest = table.Max(row => row.Sensor);
        findings.AddRange(FullPixels.Findings(reader, sky.Rate.Value, question.ExposureSeconds, warmest));
        findings.AddRange(FlickerRanks.Findings(reader, sky.Rate.Value, question.ExposureSeconds, warmest));
        SetpointAnswer facts = SetpointFacts.Collect(reader, question, sky, solution, findings);
        return facts with
        {
            Verdict = facts.Limit is null ? SetpointVerdict.Uncooled : SetpointVerdict.Limited,
            Uncooled = true,
            WarmestAir = given ? ambient.Max(night => night.Celsius) : null,
            Ambient = table,
            Nights = NightsSummary.Uncooled(question, solution),
        };
    }

    /// <summary>
    /// One finding for all temperatures outside the measured range; a refusal for the first that lies too far outside.
    /// </summary>
    private static IEnumerable<Finding> Outside(SensorReader reader, double[] sensor)
    {
        Finding[] each = [.. sensor.SelectMany(t => Guard.Temperature(reader, t, "sensor temperature"))];
        if (each.Length == 0)
            return [];
        double[] beyond = [.. sensor.Where(t => reader.Outside(t) > 0.05)];
        string which =
            beyond.Length == 1
                ? $"A sensor at {Plain.Celsius(beyond[0])} is"
                : $"On {Plain.Whole(beyond.Length)} of the nights, down to {Plain.Celsius(beyond.Min())} and up to "
                    + $"{Plain.Celsius(beyond.Max())}, the sensor is";
        return
        [
            new Finding(
                FindingCodes.Extrapolated,
                Severity.Warning,
                $"{which} outside the measured range, {Plain.Celsius(reader.Range.Low)} to "
                    + $"{Plain.Celsius(reader.Range.High)}; the answer there rests on the fitted law, not on darks."
            ),
        ];
    }

    private static AmbientTemperature[] Usual(SensorReader reader, SetpointQuestion question)
    {
        double low = reader.Range.Low - Refuse.ExtrapolationCelsius - question.SelfHeating,
            high = reader.Range.High + Refuse.ExtrapolationCelsius - question.SelfHeating;
        AmbientTemperature[] usual =
        [
            .. Enumerable
                .Range(-3, 10)
                .Select(i => 5.0 * i)
                .Where(t => t >= low && t <= high)
                .Select(t => new AmbientTemperature(Plain.Celsius(t), t)),
        ];
        return usual.Length > 0 ? usual : [new AmbientTemperature(Plain.Celsius(low), low)];
    }
}
