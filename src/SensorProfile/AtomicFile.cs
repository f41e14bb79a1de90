namespace SensorProfile;

/// <summary>
/// Writes files that are either complete or not there: nothing half-written ever stands under a final name.
/// </summary>
internal static class AtomicFile
{
    /// <summary>
    /// Writes to a temporary file in the same folder, flushes it to the disk, then gives it its name; a file of that
    /// name is replaced.
    /// </summary>
    /// <param name="path">The final name.</param>
    /// <param name="write">Writes the content; when it throws, the temporary file is removed and the old file still
    /// stands.</param>
    /// <exception cref="IOException">The disk is full, or the folder cannot be written to.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the file is read-only.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        string full = Path.GetFullPath(path);
        string temporary = Path.Combine(Path.GetDirectoryName(full)!, $".{Guid.NewGuid():N}.partial");
        try
        {
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }
            File.Move(temporary, full, overwrite: true);
        }
        catch
        {
            File.Delete(temporary); // no error when it was never made
            throw;
        }
    }
}
