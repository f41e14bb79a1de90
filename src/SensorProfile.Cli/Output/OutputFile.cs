namespace SensorProfile.Cli.Output;

/// <summary>A single output file that appears under its name only when it is complete.</summary>
internal static class OutputFile
{
    /// <summary>
    /// Before any work is done, refuses an existing file, and refuses a file that the command reads even when asked to
    /// overwrite.
    /// </summary>
    /// <param name="path">The path as given.</param>
    /// <param name="overwrite">Whether an existing file may be replaced.</param>
    /// <param name="option">The option that gave the path.</param>
    /// <param name="read">Files that the command reads; folders and null are ignored.</param>
    public static void Check(string path, bool overwrite, string option, params IEnumerable<string?> read)
    {
        if (
            read.OfType<string>()
                .Where(File.Exists)
                .Any(file => PathRelations.IsSameOrInside(PathRelations.Resolved(path), PathRelations.Resolved(file)))
        )
            throw CommandFailure.WrongCommandLine($"{option} {path} is one of the files read. Choose another name.");
        if (Directory.Exists(path))
            throw CommandFailure.UnwritableOutput($"{path} is a folder. Give a file name with {option}.");
        if (File.Exists(path) && !overwrite)
            throw CommandFailure.UnwritableOutput(
                $"{path} exists. Choose another name for {option}, or add --overwrite."
            );
    }

    /// <summary>
    /// Lets <paramref name="write"/> fill a temporary file beside the final one, then gives it its name.
    /// </summary>
    public static void Write(string path, Action<string> write)
    {
        string full = Path.GetFullPath(path);
        string work = Path.Combine(
            Path.GetDirectoryName(full)!,
            $".{Path.GetFileNameWithoutExtension(full)}.unfinished-{Environment.ProcessId}{Path.GetExtension(full)}"
        );
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            write(work);
            File.Move(work, full, overwrite: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw CommandFailure.UnwritableOutput(
                $"{path}: cannot be written; free some space or choose another place "
                    + $"({problem.Message.TrimEnd('.')}).",
                problem
            );
        }
        finally
        {
            if (File.Exists(work))
                File.Delete(work);
        }
    }
}
