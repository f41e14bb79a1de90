namespace SensorProfile.Frames;

/// <summary>A file that may hold a frame.</summary>
/// <param name="Path">Full path, as it was reached.</param>
/// <param name="Name">Name relative to the folder that was given, with forward slashes; unique in one scan.</param>
/// <param name="Content">What its first bytes and its name say it is.</param>
internal sealed record ScannedFile(string Path, string Name, FileContent Content = FileContent.Fits);
