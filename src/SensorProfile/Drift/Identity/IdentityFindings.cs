using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.Identity;

/// <summary>What is said of sessions that are of another sensor, or may be.</summary>
internal static class IdentityFindings
{
    /// <summary>The findings of a sorting.</summary>
    public static IEnumerable<Finding> Of(SensorSorting sensors)
    {
        if (sensors.Others.Count > 0)
            yield return new Finding(
                FindingCodes.AnotherSensor,
                Severity.Warning,
                $"{Plain.Whole(sensors.Others.Count)} of the profiles carry the same camera name and were not compared: "
                    + $"{string.Join(" ", sensors.Others.Select(r => $"{r.File}: {r.Reason}"))}",
                [.. sensors.Others.Select(r => r.File)]
            );
        if (sensors.Unsure.Count > 0)
            yield return new Finding(
                FindingCodes.SensorNotIdentified,
                Severity.Note,
                "Whether all profiles are of one sensor cannot be told from their pixels: too few hot pixels, and no "
                    + "pattern of ordinary ones that would show.",
                [.. sensors.Unsure.Select(p => p.File)]
            );
    }
}
