using SensorProfile.Drift.Archive;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Identity;

/// <summary>Sorts the sessions of one camera name by sensor.</summary>
/// <param name="Kept">Sessions of the sensor under study, oldest first.</param>
/// <param name="Others">Sessions of other sensors, each with the evidence.</param>
/// <param name="Unsure">Sessions whose maps do not decide; they are also in <paramref name="Kept"/>.</param>
internal sealed record SensorSorting(
    IReadOnlyList<ProfileOnDisk> Kept,
    IReadOnlyList<RejectedFile> Others,
    IReadOnlyList<ProfileOnDisk> Unsure
)
{
    /// <summary>Sorts the sessions.</summary>
    /// <remarks>
    /// The sensor with the most sessions is under study; a tie goes to the one with the latest session. A session that
    /// cannot be identified stays with it.
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
                    $"It is from another sensor than {asked[^1].Profile.File}: {asked[^1].Compare(s, read).Evidence}."
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
