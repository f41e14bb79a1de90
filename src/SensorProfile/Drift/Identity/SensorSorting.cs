using SensorProfile.Drift.Archive;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Identity;

/// <summary>Parts the sessions of one camera name by the sensors that took them.</summary>
/// <param name="Kept">Those of the sensor that is asked about, oldest first.</param>
/// <param name="Others">Those of other sensors, each with the evidence.</param>
/// <param name="Unsure">Those with maps of which it cannot be told; they are among the kept.</param>
internal sealed record SensorSorting(
    IReadOnlyList<ProfileOnDisk> Kept,
    IReadOnlyList<RejectedFile> Others,
    IReadOnlyList<ProfileOnDisk> Unsure
)
{
    /// <summary>Sorts them.</summary>
    /// <remarks>
    /// The sensor with most sessions, that of the last one among equals, is the one that is asked about. A session of
    /// which it cannot be told stays with it.
    /// </remarks>
    public static SensorSorting Sort(
        IReadOnlyList<ProfileOnDisk> profiles,
        Func<ProfileOnDisk, int, (PixelRates?, Finding?)> read
    )
    {
        List<List<SensorFingerprint>> sensors = [];
        List<ProfileOnDisk> unsure = [];
        foreach (ProfileOnDisk profile in profiles)
        {
            if (SensorFingerprint.Read(profile, read) is not { } print)
                continue;
            SensorIdentity[] against = [.. sensors.Select(s => s[^1].Compare(print, read))];
            int at = Array.FindIndex(against, i => i.Match == SensorMatch.Same);
            if (at >= 0)
                sensors[at].Add(print);
            else if (against.Any(i => i.Match == SensorMatch.CannotTell))
                unsure.Add(profile);
            else
                sensors.Add([print]);
        }
        if (sensors.Count < 2)
            return new SensorSorting(profiles, [], unsure);
        List<SensorFingerprint> asked = sensors
            .OrderByDescending(s => s.Count)
            .ThenByDescending(s => s[^1].Profile.DateUtc)
            .First();
        Dictionary<string, RejectedFile> others = sensors
            .Where(s => s != asked)
            .SelectMany(s => s)
            .ToDictionary(
                s => s.Profile.File,
                s => new RejectedFile(
                    s.Profile.File,
                    $"It is of another sensor than {asked[^1].Profile.File}: {asked[^1].Compare(s, read).Evidence}."
                ),
                StringComparer.Ordinal
            );
        return new SensorSorting(
            [.. profiles.Where(p => !others.ContainsKey(p.File))],
            [.. profiles.Where(p => others.ContainsKey(p.File)).Select(p => others[p.File])],
            unsure
        );
    }
}
