using SensorProfile.Drift.Archive;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift;

/// <summary>One mode in every profile that measured it, oldest first.</summary>
/// <param name="Name">Settings in words.</param>
/// <param name="Members">Profile and index of the mode in it; at least two.</param>
internal sealed record MatchedMode(string Name, IReadOnlyList<(ProfileOnDisk Profile, int Index)> Members)
{
    /// <summary>
    /// A member's mode, without values carried over from other modes: those are compared in the mode that measured them.
    /// </summary>
    public ModeProfile Mode(int member)
    {
        ModeProfile mode = Members[member].Profile.Profile.Modes[Members[member].Index];
        return mode.DarkCurrent?.CarriedFrom is null
            ? mode
            : mode with
            {
                DarkCurrent = null,
                FixedPattern = mode.FixedPattern is not { } pattern
                    ? null
                    : pattern with
                    {
                        HotPixelCurve = [],
                        HotPixelCurves = [],
                        RateQuantiles = [],
                        Defects = null,
                        Glow = [],
                    },
            };
    }

    /// <summary>
    /// Modes with the same settings, in the order of the last profile; a finding names modes measured only once.
    /// </summary>
    public static IReadOnlyList<MatchedMode> Match(IReadOnlyList<ProfileOnDisk> profiles, List<Finding> findings)
    {
        List<(ModeSettings Settings, List<(ProfileOnDisk, int)> Members)> groups = [];
        foreach (ProfileOnDisk profile in profiles.Reverse())
            for (int m = 0; m < profile.Profile.Modes.Count; m++)
            {
                ModeSettings settings = profile.Profile.Modes[m].Settings;
                int at = groups.FindIndex(g => g.Settings == settings);
                if (at < 0)
                    groups.Add((settings, [(profile, m)]));
                else
                    groups[at].Members.Insert(0, (profile, m));
            }
        foreach (var lone in groups.Where(g => g.Members.Count == 1))
            findings.Add(
                new Finding(
                    FindingCodes.ModeAlone,
                    Severity.Note,
                    $"{ModeChoice.Name(lone.Settings)} was measured only in {lone.Members[0].Item1.File} and was "
                        + "not compared: settings must be the same "
                        + $"({Others(groups.Select(g => g.Settings), lone.Settings)}).",
                    [lone.Members[0].Item1.File]
                )
            );
        return
        [
            .. groups
                .Where(g => g.Members.Count > 1)
                .Select(g => new MatchedMode(ModeChoice.Name(g.Settings), g.Members)),
        ];
    }

    private static string Others(IEnumerable<ModeSettings> all, ModeSettings lone)
    {
        string[] others = [.. all.Where(s => s != lone).Select(ModeChoice.Name)];
        return others.Length == 0 ? "no other profile has a mode" : "the others have " + string.Join("; ", others);
    }
}
