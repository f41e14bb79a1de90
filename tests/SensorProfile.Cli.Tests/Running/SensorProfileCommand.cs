using System.Diagnostics;
using System.Text;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>Runs the built command as a process of its own, as a user would.</summary>
internal sealed record SensorProfileCommand
{
    private static readonly string Program = System.IO.Path.Combine(AppContext.BaseDirectory, "sensorprofile.dll");

    public string WorkingDirectory { get; init; } = AppContext.BaseDirectory;

    /// <summary>Set on top of the test's own environment; null removes a variable.</summary>
    public IReadOnlyDictionary<string, string?> Environment { get; init; } = new Dictionary<string, string?>();

    public CommandRun Run(params string[] arguments)
    {
        using Process process = Start(arguments);
        return Finish(process);
    }

    public Process Start(params string[] arguments) => Process.Start(StartInfo("dotnet", [Program, .. arguments]))!;

    /// <summary>Runs a shell line in which <c>$SP</c> stands for the command.</summary>
    public CommandRun Shell(string line)
    {
        ProcessStartInfo info = StartInfo("/bin/sh", ["-c", line]);
        info.Environment["SP"] = $"dotnet {Program}";
        using Process process = Process.Start(info)!;
        return Finish(process);
    }

    public static CommandRun Finish(Process process)
    {
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CommandRun(process.ExitCode, output, error.Result);
    }

    private ProcessStartInfo StartInfo(string file, IEnumerable<string> arguments)
    {
        ProcessStartInfo info = new(file, arguments)
        {
            WorkingDirectory = WorkingDirectory,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        foreach (string name in new[] { "COLUMNS", "NO_COLOR", "TERM" })
            info.Environment.Remove(name);
        // a setup that a test writes stays with that test, and nobody's own is read
        info.Environment["XDG_CONFIG_HOME"] = System.IO.Path.Combine(WorkingDirectory, ".config");
        foreach ((string name, string? value) in Environment)
        {
            if (value is null)
                info.Environment.Remove(name);
            else
                info.Environment[name] = value;
        }
        return info;
    }
}
