using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.Identity;

/// <summary>Findings about sessions that are, or may be, of another sensor.</summary>
internal static class IdentityFindings
{
    /// <summary>The findings that follow from a sorting.</summary>
    public static IEnumerable<Finding> Judge(SensorSorting sensors)
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
                "The pixels cannot tell whether all profiles are from one sensor: too few hot pixels, and no measurable "
                    + "pattern of ordinary ones.",
                [.. sensors.Unsure.Select(p => p.File)]
            );
    }
}
