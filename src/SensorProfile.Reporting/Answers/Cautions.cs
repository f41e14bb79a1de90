using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Answers;

/// <summary>Cautions for people and equipment, in the words of this program.</summary>
internal static class Cautions
{
    private const string Steps =
        "Change the temperature of a cooled sensor in steps and let it settle; follow the maker's limit on the "
        + "ramp (common practice: a few °C per minute at most, no source). Thermal shock and condensation can "
        + "damage a sensor.";
    private const string Frost =
        "Cooling below the dew point with spent desiccant makes frost inside the chamber: stop when the frames "
        + "show it.";
    private const string Warming =
        "A camera that comes in from the cold, a refrigerator or a freezer must warm up in a closed bag before "
        + "it is opened or powered: condensation on electronics can destroy it and is an electrical hazard.";
    private const string Power =
        "Batteries lose capacity in the cold; use only supplies and chargers meant for outdoor, damp use, and "
        + "follow local electrical codes.";
    private const string Sun =
        "Never point an uncovered telescope or lens at or near the Sun to take flats; use a diffuse, dim light.";
    private const string Estimates =
        "The figures are estimates for planning; they do not replace the maker's ratings or the judgement of a "
        + "licensed electrician or engineer where safety is concerned.";

    internal static IReadOnlyList<string> Cooling { get; } = [Steps, Frost, Estimates];

    internal static IReadOnlyList<string> ShotsCooled { get; } = [Steps, Frost, Sun, Power, Estimates];

    internal static IReadOnlyList<string> ShotsUncooled { get; } = [Warming, Power, Sun, Estimates];

    internal static IReadOnlyList<string> Flats { get; } = [Sun, Estimates];

    internal static IReadOnlyList<string> NightDarks { get; } = [Power, Estimates];

    /// <summary>
    /// The cautions of a profile: about cooling where the sensor was colder than the air of a mild night, about warming
    /// up otherwise.
    /// </summary>
    internal static IReadOnlyList<string> OfProfile(CameraProfile profile)
    {
        double[] temperatures =
        [
            .. profile.Modes.SelectMany(mode => mode.DarkCurrent?.Points ?? []).Select(point => point.Temperature),
        ];
        List<string> cautions = [];
        if (temperatures.Length > 1)
            cautions.Add(Steps);
        if (temperatures.Any(temperature => temperature < 0))
            cautions.Add(Frost);
        cautions.Add(Warming);
        if (profile.Modes.Any(mode => mode.PhotonTransfer is null))
            cautions.Add(Sun);
        cautions.Add(Estimates);
        return cautions;
    }
}
