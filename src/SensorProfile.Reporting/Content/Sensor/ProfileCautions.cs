using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Cautions for people and equipment, where they apply.</summary>
internal static class ProfileCautions
{
    /// <summary>
    /// The cautions of a profile: about cooling where the sensor was colder than the air of a mild night, about
    /// warming up otherwise.
    /// </summary>
    public static IReadOnlyList<string> For(CameraProfile profile)
    {
        double[] temperatures =
        [
            .. profile.Modes.SelectMany(mode => mode.DarkCurrent?.Points ?? []).Select(point => point.Temperature),
        ];
        var cautions = new List<string>();
        if (temperatures.Length > 1)
            cautions.Add(
                "Change the temperature of a cooled sensor in steps and let it settle; keep to the maker's limit "
                    + "on the ramp (common practice: a few °C per minute at most, no source). Thermal shock and "
                    + "condensation can damage a sensor."
            );
        if (temperatures.Any(temperature => temperature < 0))
            cautions.Add(
                "Below the dew point a chamber with spent desiccant grows frost: stop when the frames show it."
            );
        cautions.Add(
            "A camera that comes in from the cold must warm up in a closed bag before it is opened or powered: "
                + "condensation on its electronics can destroy it and is an electrical hazard."
        );
        if (profile.Modes.Any(mode => mode.PhotonTransfer is null))
            cautions.Add(
                "For flats use a dim, diffuse light; never point an uncovered telescope or lens at or near the Sun."
            );
        cautions.Add(
            "The figures are estimates for planning images; they do not replace the maker's ratings, nor a "
                + "licensed electrician's or engineer's judgement where safety is concerned."
        );
        return cautions;
    }
}
