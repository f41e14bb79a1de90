using System.Globalization;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Archive;

/// <summary>Separates profiles of one camera from those that must not be compared with them.</summary>
internal static class ComparableProfiles
{
    /// <summary>The profiles to compare, oldest first, and the rejected ones, each with the reason.</summary>
    public static (IReadOnlyList<ProfileOnDisk> Kept, IReadOnlyList<RejectedFile> Refused) Select(
        IReadOnlyList<ProfileOnDisk> profiles
    )
    {
        ProfileOnDisk[] ordered = [.. profiles.OrderBy(p => p.DateUtc).ThenBy(p => p.File, StringComparer.Ordinal)];
        // The camera with the most profiles is the subject; a tie goes to the one with the latest profile.
        CameraInfo? camera = ordered
            .Reverse()
            .GroupBy(p => Identity(p.Profile.Camera))
            .OrderByDescending(g => g.Count())
            .FirstOrDefault()
            ?.First()
            .Profile.Camera;
        List<ProfileOnDisk> kept = [];
        List<RejectedFile> refused = [];
        foreach (ProfileOnDisk profile in ordered)
        {
            string? reason =
                Difference(camera!, profile.Profile.Camera) is { Length: > 0 } difference
                    ? $"It is from another camera or another kind of frame: {difference}."
                : profile.Profile.Modes.Count == 0 ? "It holds no measured mode."
                : NotRaw(profile.Profile) is not null ? "Its frames were not raw, so its numbers are not the sensor's."
                : kept.FirstOrDefault(k => SameFrames(k.Profile, profile.Profile)) is { } twin
                    ? $"It was made from the same frames as {twin.File}."
                : null;
            if (reason is null)
                kept.Add(profile);
            else
                refused.Add(new RejectedFile(profile.File, reason));
        }
        return (kept, refused);
    }

    private static string Identity(CameraInfo camera) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{camera.Name.Trim().ToUpperInvariant()}|{Sides(camera)}|{Colours(camera)}|{camera.CodeStep}"
        );

    // a capture program that rotates its frames swaps their sides and shifts the filter pattern; the sensor is the same
    private static (int Shorter, int Longer) Sides(CameraInfo camera) =>
        (Math.Min(camera.Width, camera.Height), Math.Max(camera.Width, camera.Height));

    private static string Colours(CameraInfo camera) => string.Concat((camera.ColourFilter ?? "none").Order());

    private static string Difference(CameraInfo wanted, CameraInfo found)
    {
        List<string> parts = [];
        void Compare(string what, string a, string b)
        {
            if (!string.Equals(a, b, StringComparison.OrdinalIgnoreCase))
                parts.Add($"{what} {b} instead of {a}");
        }
        Compare("camera", wanted.Name.Trim(), found.Name.Trim());
        if (Sides(wanted) != Sides(found))
            Compare(
                "size",
                string.Create(CultureInfo.InvariantCulture, $"{wanted.Width} × {wanted.Height} px"),
                string.Create(CultureInfo.InvariantCulture, $"{found.Width} × {found.Height} px")
            );
        if (Colours(wanted) != Colours(found))
            Compare("colour filter", wanted.ColourFilter ?? "none", found.ColourFilter ?? "none");
        Compare(
            "code step",
            wanted.CodeStep.ToString(CultureInfo.InvariantCulture),
            found.CodeStep.ToString(CultureInfo.InvariantCulture)
        );
        return string.Join(", ", parts);
    }

    /// <summary>The refusal of frames that were not raw, in a profile without any gain; otherwise null.</summary>
    internal static Finding? NotRaw(CameraProfile profile) =>
        profile.Modes.Any(m => m.Gain is not null || m.Channels.Any(c => c.Gain is not null))
            ? null
            : profile.Findings.FirstOrDefault(f =>
                f is { Code: FindingCodes.ResponseNotRaw, Severity: Severity.Refusal }
            );

    private static bool SameFrames(CameraProfile a, CameraProfile b) =>
        a.Frames.InputDigest.Length > 0 && a.Frames.InputDigest == b.Frames.InputDigest;
}
