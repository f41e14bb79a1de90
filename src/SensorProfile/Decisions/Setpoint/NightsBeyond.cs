using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>
/// Nights of an uncooled camera that lie too far outside the profile: the others are answered, and these are listed.
/// </summary>
internal static class NightsBeyond
{
    /// <summary>
    /// The question without them, and the nights themselves. When the profile reaches none, all nights stay in the
    /// question: then it is refused as a whole.
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

    /// <summary>Darks that would bring these nights within reach.</summary>
    internal static IReadOnlyList<SettlingFrames> Darks(
        SensorReader reader,
        SetpointQuestion question,
        IReadOnlyList<AmbientTemperature> beyond
    )
    {
        double[] far = [.. beyond.Select(night => Sensor(question, night))];
        double coldest = far.Min(),
            warmest = far.Max();
        double[] ends =
            warmest > reader.Range.High && coldest < reader.Range.Low
                ? [coldest, warmest]
                : [warmest > reader.Range.High ? warmest : coldest];
        return [.. ends.SelectMany(celsius => SettlingFrames.NewTemperature(question.ExposureSeconds, celsius))];
    }

    private static double Sensor(SetpointQuestion question, AmbientTemperature night) =>
        night.Celsius + question.SelfHeating;
}
