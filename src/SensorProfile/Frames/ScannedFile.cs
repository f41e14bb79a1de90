namespace SensorProfile.Frames;

/// <summary>A file that may hold a frame.</summary>
/// <param name="Path">Full path by which it was reached.</param>
/// <param name="Name">Name relative to the given folder, with forward slashes; unique in one scan.</param>
/// <param name="Content">Type, from its first bytes and its name.</param>
internal sealed record ScannedFile(string Path, string Name, FileContent Content = FileContent.Fits);
