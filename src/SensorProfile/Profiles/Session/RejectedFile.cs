namespace SensorProfile.Profiles.Session;

/// <summary>A file that was left out.</summary>
/// <param name="File">Name relative to the folder that was given.</param>
/// <param name="Reason">One plain sentence.</param>
public sealed record RejectedFile(string File, string Reason);
