using System.Globalization;
using System.Text.Json;
using SensorProfile.Cli.Terminal;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// The command's own entry (<see cref="CommandLine"/>) as often as it is asked, one question a line: most of a short
/// command's time is spent compiling it, and here that is done once.
/// </summary>
/// <remarks>
/// Current folder and environment belong to a process, so each process answers one question at a time. Output and error
/// go to writers as into a pipe; what a command wrote past them would spoil the answer's line and fail the test.
/// </remarks>
internal static class WarmProgram
{
    private static readonly string[] known = ["COLUMNS", "NO_COLOR", "SOURCE_DATE_EPOCH", "XDG_CONFIG_HOME"];

    /// <summary>Whether a variable is read anew by every command: most are read once, when a process starts.</summary>
    public static bool Knows(string variable) => known.Contains(variable);

    private static void Main()
    {
        // as in the program's own entry
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture =
            CultureInfo.InvariantCulture;
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        while (Console.In.ReadLine() is { } line)
            Console.Out.WriteLine(JsonSerializer.Serialize(Answer(JsonSerializer.Deserialize<WarmQuestion>(line)!)));
    }

    private static CommandRun Answer(WarmQuestion question)
    {
        string home = Environment.CurrentDirectory;
        Dictionary<string, string?> before = question.Variables.Keys.ToDictionary(
            name => name,
            Environment.GetEnvironmentVariable
        );
        try
        {
            Environment.CurrentDirectory = question.Folder;
            Set(question.Variables);
            return Run([.. question.Arguments]);
        }
        finally
        {
            Environment.CurrentDirectory = home;
            Set(before);
        }
    }

    private static CommandRun Run(string[] arguments)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        int code = CommandLine.Run(
            arguments,
            new Session(
                new ResultStream(() => output, isTerminal: false),
                new StandardErrorStream(TextWriter.Synchronized(error), isTerminal: false, TimeProvider.System),
                DatedClock.FromEnvironment(),
                CancellationToken.None
            )
        );
        // the command has closed it; its content can still be had
        return new CommandRun(code, System.Text.Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    private static void Set(IReadOnlyDictionary<string, string?> variables)
    {
        foreach ((string name, string? value) in variables)
            Environment.SetEnvironmentVariable(name, value);
    }
}
