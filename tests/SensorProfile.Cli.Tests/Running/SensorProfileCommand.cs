using System.Diagnostics;
using System.Text;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// Runs the built command: as a process of its own where that may matter (signals, pipes, locale, settings of the
/// runtime), else in a process that has run commands before and has them compiled already (<see cref="WarmProgram"/>).
/// </summary>
internal sealed record SensorProfileCommand
{
    private static readonly string Program = Checkout.Built("src/SensorProfile.Cli", "sensorprofile.dll");

    public string WorkingDirectory { get; init; } = AppContext.BaseDirectory;

    /// <summary>Set on top of the test's own environment; null removes a variable.</summary>
    public IReadOnlyDictionary<string, string?> Environment { get; init; } = new Dictionary<string, string?>();

    /// <summary>Never in a warm process.</summary>
    public bool OnItsOwn { get; init; }

    public CommandRun Run(params string[] arguments)
    {
        if (!OnItsOwn && Environment.Keys.All(WarmProgram.Knows))
            return WarmProcess.Run(new WarmQuestion(WorkingDirectory, Variables(), arguments));
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
        foreach ((string name, string? value) in Variables())
        {
            if (value is null)
                info.Environment.Remove(name);
            else
                info.Environment[name] = value;
        }
        return info;
    }

    /// <summary>What differs from the test's own surroundings; null removes a variable.</summary>
    private Dictionary<string, string?> Variables()
    {
        var variables = new Dictionary<string, string?>
        {
            ["COLUMNS"] = null,
            ["NO_COLOR"] = null,
            ["TERM"] = null,
            // a setup that a test writes stays with that test, and nobody's own is read
            ["XDG_CONFIG_HOME"] = System.IO.Path.Combine(WorkingDirectory, ".config"),
        };
        foreach ((string name, string? value) in Environment)
            variables[name] = value;
        return variables;
    }
}
