namespace SensorProfile.Raw.Writing;

/// <summary>
/// Writes a file that appears under its name complete or not at all: temporary file in the same folder, then renamed.
/// </summary>
internal static class NewDngFile
{
    /// <summary>Writes the file.</summary>
    /// <exception cref="IOException">The disk is full, the folder cannot be written, or the name is taken.</exception>
    public static void Write(string path, bool overwrite, Action<Stream> write)
    {
        if (!overwrite && File.Exists(path))
            throw new IOException($"{path} exists and was not replaced.");
        string temporary = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, Path.GetRandomFileName());
        try
        {
            using (
                var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1 << 16)
            )
                write(stream);
            File.Move(temporary, path, overwrite);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }
}
