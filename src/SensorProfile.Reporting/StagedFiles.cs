namespace SensorProfile.Reporting;

/// <summary>
/// Writes several files so that they appear together: first all into a hidden folder, then each into its place.
/// </summary>
internal static class StagedFiles
{
    /// <summary>Writes the files.</summary>
    /// <param name="folder">Their folder; made when missing.</param>
    /// <param name="files">Name within the folder, with forward slashes, and what writes the content.</param>
    /// <exception cref="IOException">With a message that names the folder and the way out.</exception>
    public static void Write(string folder, IReadOnlyDictionary<string, Action<Stream>> files)
    {
        Directory.CreateDirectory(folder);
        string staging = Path.Combine(folder, $".{Guid.NewGuid():N}.partial");
        try
        {
            foreach ((string name, Action<Stream> write) in files)
            {
                string path = Path.Combine(staging, name);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                AtomicFile.Write(path, write);
            }
            foreach (string name in files.Keys)
            {
                string path = Path.Combine(folder, name);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.Move(Path.Combine(staging, name), path, overwrite: true);
            }
        }
        catch (IOException problem) when (problem is not DirectoryNotFoundException)
        {
            throw new IOException(
                $"{folder}: the report cannot be written ({problem.Message.TrimEnd('.')}). Free some space or choose "
                    + "another folder.",
                problem
            );
        }
        finally
        {
            if (Directory.Exists(staging))
                Directory.Delete(staging, recursive: true);
        }
    }
}
