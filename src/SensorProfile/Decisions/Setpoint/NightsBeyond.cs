using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>
/// Nights of an uncooled camera that lie too far outside the profile: the others are answered, and these are named.
/// </summary>
internal static class NightsBeyond
{
    /// <summary>
    /// The question without them, and them. All nights stay in the question when the profile reaches none: then it is
    /// refused as a whole.
    /// </summary>
    internal static (SetpointQuestion Within, IReadOnlyList<AmbientTemperature> Beyond) Split(
        SensorReader reader,
        SetpointQuestion question
    )
    {
        if (question.Cooled)
            return (question, []);
        bool Reached(AmbientTemperature night) =>
            reader.Outside(Sensor(question, night)) <= Refuse.ExtrapolationCelsius;
        AmbientTemperature[] within = [.. question.Ambient.Where(Reached)];
        return within.Length == 0
            ? (question, [])
            : (question with { Ambient = within }, [.. question.Ambient.Where(night => !Reached(night))]);
    }

    /// <summary>
    /// The answer for the other nights with these named, and with the darks that would bring them within reach.
    /// </summary>
    internal static SetpointAnswer Named(
        SensorReader reader,
        SetpointQuestion question,
        SetpointAnswer answer,
        IReadOnlyList<AmbientTemperature> beyond
    )
    {
        if (beyond.Count == 0)
            return answer;
        double[] air = [.. beyond.Select(night => night.Celsius).Order()],
            far = [.. beyond.Select(night => Sensor(question, night))];
        string which =
            $"{Said.Whole(air.Length)} night{(air.Length == 1 ? "" : "s")} "
            + $"({(air[^1] - air[0] < 0.05 ? Said.Celsius(air[0]) : $"{Said.Celsius(air[0])} to {Said.Celsius(air[^1])}")})";
        double[] ends =
            far.Max() > reader.Range.High && far.Min() < reader.Range.Low
                ? [far.Min(), far.Max()]
                : [far.Max() > reader.Range.High ? far.Max() : far.Min()];
        IReadOnlyList<SettlingFrames> darks =
        [
            .. ends.SelectMany(celsius => SettlingFrames.NewTemperature(question.ExposureSeconds, celsius)),
        ];
        return answer with
        {
            Sentence = $"{answer.Sentence.TrimEnd('.')}; for {which} it cannot be told.",
            Verdict = Answer.CannotTell,
            Settling = darks,
            Findings =
            [
                .. answer.Findings,
                new Finding(
                    "nights-beyond-profile",
                    Severity.Warning,
                    $"On {which} the sensor is more than {Said.Whole((long)Refuse.ExtrapolationCelsius)} °C "
                        + $"outside the measured range, {Said.Celsius(reader.Range.Low)} to "
                        + $"{Said.Celsius(reader.Range.High)}: add {SettlingFrames.Words(darks)} and characterise again."
                ),
            ],
        };
    }

    private static double Sensor(SetpointQuestion question, AmbientTemperature night) =>
        night.Celsius + question.SelfHeating;
}
