using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Archive;

/// <summary>The profiles found under some paths.</summary>
/// <param name="Profiles">Those that could be read, oldest first.</param>
/// <param name="Refused">Those that could not, each with the reason.</param>
public sealed record FoundProfiles(IReadOnlyList<ProfileOnDisk> Profiles, IReadOnlyList<RejectedFile> Refused);
