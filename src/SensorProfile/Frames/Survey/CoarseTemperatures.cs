using SensorProfile.Raw;

namespace SensorProfile.Frames.Survey;

/// <summary>
/// Temperatures in raw files that say little about the sensor's die: those of the camera body, or in whole degrees.
/// </summary>
internal static class CoarseTemperatures
{
    private const double Fine = 0.25; // °C; larger steps are reported

    /// <summary>One finding per place where temperatures were read; none for adequate readings.</summary>
    /// <remarks>A single 12.0 °C looks like a whole degree, so the step is taken from all frames together.</remarks>
    public static IEnumerable<Finding> Find(IReadOnlyList<ReadFrame> frames)
    {
        IEnumerable<IGrouping<RawTemperaturePlace, ReadFrame>> places = frames
            .Where(f => f.Header.TemperaturePlace is not null && f.Header.TemperatureCelsius is not null)
            .Where(f => f.Row?.TemperatureCelsius is null)
            .GroupBy(f => f.Header.TemperaturePlace!.Value)
            .OrderBy(place => place.Key);
        foreach (IGrouping<RawTemperaturePlace, ReadFrame> place in places)
        {
            double step = place.Min(f => f.Header.TemperatureStepCelsius);
            if (place.Key != RawTemperaturePlace.Sensor || step > Fine)
                yield return new Finding(
                    FindingCodes.TemperatureCoarse,
                    Severity.Warning,
                    $"The temperature in {Counted.Frames(place.Count())} is {Where(place.Key)}{Steps(step)}, not that of "
                        + "the sensor's die: it was used as it stands; hot pixels order the frames more finely.",
                    [.. place.Select(f => f.Frame.Name)]
                );
        }
    }

    private static string Where(RawTemperaturePlace place) =>
        place switch
        {
            RawTemperaturePlace.Sensor => "read beside the sensor",
            RawTemperaturePlace.Body => "that of the camera's body",
            _ => "that of the air or of the camera's body",
        };

    private static string Steps(double step) =>
        step switch
        {
            >= 1 => ", in whole degrees",
            > Fine => $", in steps of {NumberText.Short(step)} °C",
            _ => "",
        };
}
