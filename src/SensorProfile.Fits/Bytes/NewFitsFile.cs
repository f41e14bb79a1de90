using Microsoft.Win32.SafeHandles;

namespace SensorProfile.Fits.Bytes;

/// <summary>
/// Writes a file that appears under its name complete or not at all: temporary file in the same folder, flush, rename.
/// </summary>
internal static class NewFitsFile
{
    /// <summary>Writes the file.</summary>
    /// <param name="path">Its final name.</param>
    /// <param name="bytes">Its length, reserved in advance so that a full disk shows at once.</param>
    /// <param name="overwrite">Whether a file of that name may be replaced.</param>
    /// <param name="durable">Whether to wait for the bytes to be on the disk before the file appears under its
    /// name.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="IOException">The disk is full, the folder cannot be written, or the name is taken.</exception>
    public static void Write(string path, long bytes, bool overwrite, bool durable, Action<SafeFileHandle> write)
    {
        if (!overwrite && File.Exists(path))
            throw new IOException($"{path} exists and was not replaced.");
        string temporary = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, Path.GetRandomFileName());
        try
        {
            using (
                SafeFileHandle handle = File.OpenHandle(
                    temporary,
                    FileMode.CreateNew,
                    FileAccess.Write,
                    FileShare.None,
                    FileOptions.None,
                    bytes
                )
            )
            {
                write(handle);
                if (durable)
                    RandomAccess.FlushToDisk(handle);
            }

            File.Move(temporary, path, overwrite);
        }
        catch (Exception e)
        {
            File.Delete(temporary);
            if (e is IOException and not DirectoryNotFoundException)
                throw new IOException(
                    $"{path} could not be written: {e.Message} Nothing was left under that name; make room or "
                        + "choose another folder.",
                    e
                );
            throw;
        }
    }
}
