using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Archive;

/// <summary>The profiles found under the given paths.</summary>
/// <param name="Profiles">Readable profiles, oldest first.</param>
/// <param name="Refused">Unreadable ones, each with the reason.</param>
public sealed record FoundProfiles(IReadOnlyList<ProfileOnDisk> Profiles, IReadOnlyList<RejectedFile> Refused);
