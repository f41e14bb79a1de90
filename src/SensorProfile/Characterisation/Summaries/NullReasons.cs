using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>For everything that could not be measured: which frames would supply it.</summary>
internal static class NullReasons
{
    public static IEnumerable<Finding> Find(IReadOnlyList<MeasuredMode> modes, Inventory inventory, double tolerance)
    {
        foreach (MeasurementLack lack in MissingMeasurements.Find(inventory, tolerance))
        {
            ModeProfile? profile = modes.Select(m => m.Profile).FirstOrDefault(p => p.Settings == lack.Settings);
            if (
                profile?.DarkCurrent?.CarriedFrom is not null
                && lack.Measurement is "dark-current" or "temperature-law"
            )
                continue; // said where it was carried over
            if (profile is not null)
                yield return IsMissing(profile, lack.Measurement)
                    ? new Finding("lacks-" + lack.Measurement, Severity.Refusal, lack.Sentence)
                    : new Finding(
                        "lacks-" + lack.Measurement,
                        Severity.Note,
                        $"Measured, but with too few frames to check the number. {lack.Sentence}"
                    );
        }
        if (modes.Count == 0)
            yield return new Finding(
                MeasurementCodes.NotMeasured,
                Severity.Refusal,
                "No bias, dark or flat frame could be measured: a survey shows what was found and "
                    + "writes a capture table in which the kinds can be filled in."
            );
    }

    private static bool IsMissing(ModeProfile profile, string measurement) =>
        measurement switch
        {
            "read-noise" => profile.ReadNoiseAdu is null,
            "pixel-noise-map" => profile.NoiseDistribution is null,
            "gain" => profile.Gain is null,
            "linearity" => profile.LinearityError is null,
            "dark-current" => profile.DarkCurrent?.RateAtReference is null,
            "temperature-law" => profile.DarkCurrent?.DoublingTemperature is null,
            _ => true,
        };
}
