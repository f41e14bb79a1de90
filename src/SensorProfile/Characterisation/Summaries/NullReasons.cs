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
                && lack.Measurement is MeasurementKind.DarkCurrent or MeasurementKind.TemperatureLaw
            )
                continue; // said where it was carried over
            if (profile is not null)
                yield return IsMissing(profile, lack.Measurement)
                    ? new Finding(CodeOf(lack.Measurement), Severity.Refusal, lack.Sentence)
                    : new Finding(
                        CodeOf(lack.Measurement),
                        Severity.Note,
                        $"Measured, but with too few frames to check the number. {lack.Sentence}"
                    );
        }
        if (modes.Count == 0)
            yield return new Finding(
                FindingCodes.NotMeasured,
                Severity.Refusal,
                "No bias, dark or flat frame could be measured: a survey shows what was found and "
                    + "writes a capture table in which the kinds can be filled in."
            );
    }

    private static bool IsMissing(ModeProfile profile, MeasurementKind measurement) =>
        measurement switch
        {
            MeasurementKind.ReadNoise => profile.ReadNoiseAdu is null,
            MeasurementKind.PixelNoiseMap => profile.NoiseDistribution is null,
            MeasurementKind.Gain => profile.Gain is null,
            MeasurementKind.Linearity => profile.LinearityError is null,
            MeasurementKind.DarkCurrent => profile.DarkCurrent?.RateAtReference is null,
            MeasurementKind.TemperatureLaw => profile.DarkCurrent?.DoublingTemperature is null,
            _ => true,
        };

    private static string CodeOf(MeasurementKind measurement) =>
        measurement switch
        {
            MeasurementKind.ReadNoise => FindingCodes.LacksReadNoise,
            MeasurementKind.PixelNoiseMap => FindingCodes.LacksPixelNoiseMap,
            MeasurementKind.Gain => FindingCodes.LacksGain,
            MeasurementKind.Linearity => FindingCodes.LacksLinearity,
            MeasurementKind.DarkCurrent => FindingCodes.LacksDarkCurrent,
            MeasurementKind.TemperatureLaw => FindingCodes.LacksTemperatureLaw,
            _ => throw new ArgumentOutOfRangeException(nameof(measurement), measurement, null),
        };
}
