namespace SensorProfile.Profiles.Session;

/// <summary>The program that made a profile.</summary>
/// <param name="Name">Program name.</param>
/// <param name="Version">Its version.</param>
public sealed record SoftwareInfo(string Name, string Version);
