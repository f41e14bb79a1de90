namespace SensorProfile.Cli.Output;

/// <summary>An output folder that appears under its name only when it is complete.</summary>
/// <remarks>Everything is written into a hidden folder beside it, which is renamed at the end, or removed when the work
/// stops.
/// With <c>overwrite</c> an existing folder is filled file by file, each file replaced in one step; tables and maps of
/// an earlier run are removed, everything else in it stays.</remarks>
internal sealed class OutputFolder : IDisposable
{
    private readonly string given,
        target;
    private readonly bool targetExists;

    private OutputFolder(string given, string target, bool targetExists, string workPath)
    {
        this.given = given;
        this.target = target;
        this.targetExists = targetExists;
        WorkPath = workPath;
    }

    /// <summary>The hidden folder to write into.</summary>
    public string WorkPath { get; }

    /// <summary>Checks that the folder may be written, before any lengthy work.</summary>
    /// <param name="folder">As given with <c>--out</c>.</param>
    /// <param name="overwrite">Whether an existing folder may be filled.</param>
    /// <param name="option">The option that gave the folder.</param>
    /// <param name="inputs">Paths that the command reads; the folder must not lie in one of them.</param>
    public static OutputFolder Begin(
        string folder,
        bool overwrite,
        IReadOnlyList<string> inputs,
        string option = "--out"
    )
    {
        string target = PathRelations.Resolved(folder);
        foreach (string input in inputs)
            if (PathRelations.IsSameOrInside(target, PathRelations.Resolved(input)) && !File.Exists(input))
                throw CommandFailure.WrongCommandLine(
                    $"{option} {folder} lies in {input}, which is read: results would mix with your frames. Choose "
                        + "a folder beside it."
                );
        bool exists = Directory.Exists(target);
        if (File.Exists(target))
            throw CommandFailure.UnwritableOutput(
                $"{folder} is a file, not a folder. Choose another name for {option}."
            );
        if (exists && !overwrite)
            throw CommandFailure.UnwritableOutput(
                $"The output folder {folder} exists. Choose another name for {option}, or add --overwrite to replace "
                    + "earlier results in it."
            );
        return new OutputFolder(folder, target, exists, Writing(folder, () => CreateWorkFolder(target)));
    }

    /// <summary>
    /// Runs a step that writes; a problem with the disk ends the command with exit code 4 and names the folder.
    /// </summary>
    public T Write<T>(Func<string, T> step) => Writing(given, () => step(WorkPath));

    /// <inheritdoc cref="Write{T}"/>
    public void Write(Action<string> step) => Writing(given, () =>
        {
            step(WorkPath);
            return true;
        });

    /// <summary>Gives the results their final name.</summary>
    public void Complete() => Writing(given, () =>
        {
            if (targetExists)
                FolderMerge.Into(WorkPath, target);
            else
                Directory.Move(WorkPath, target);
            return true;
        });

    public void Dispose()
    {
        try
        {
            if (Directory.Exists(WorkPath))
                Directory.Delete(WorkPath, recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The hidden folder is left behind: its name says what it is, and the command's own message matters more.
        }
    }

    private static string CreateWorkFolder(string target)
    {
        string parent = Path.GetDirectoryName(target) ?? target;
        string name = Path.GetFileName(target);
        Directory.CreateDirectory(parent);
        string work = Path.Combine(
            parent,
            $".{(name.Length > 100 ? name[..100] : name)}.unfinished-{Environment.ProcessId}"
        );
        // left behind by a killed process with the same id
        if (Directory.Exists(work))
            Directory.Delete(work, recursive: true);
        return Directory.CreateDirectory(work).FullName;
    }

    private static T Writing<T>(string folder, Func<T> step)
    {
        try
        {
            return step();
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or ArgumentException { ParamName: "path" })
        {
            throw CommandFailure.UnwritableOutput(
                $"{folder}: the results cannot be written there; free some space or choose another place "
                    + $"({problem.Message.TrimEnd('.')}).",
                problem
            );
        }
    }
}
