using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// Processes of <see cref="WarmProgram"/>: as many as tests run at once, kept until the tests are over and their
/// standard inputs close.
/// </summary>
internal static class WarmProcess
{
    private static readonly ConcurrentBag<Process> idle = [];

    public static CommandRun Run(WarmQuestion question)
    {
        if (!idle.TryTake(out Process? process))
            process = Start();
        process.StandardInput.WriteLine(JsonSerializer.Serialize(question));
        process.StandardInput.Flush();
        string? line = process.StandardOutput.ReadLine();
        if (line is null)
        {
            process.WaitForExit();
            throw new InvalidOperationException(
                $"The process ended ({process.ExitCode}) at: {string.Join(' ', question.Arguments)}"
            );
        }
        CommandRun run = JsonSerializer.Deserialize<CommandRun>(line)!;
        idle.Add(process);
        return run;
    }

    private static Process Start()
    {
        string program = typeof(WarmProcess).Assembly.Location;
        return Process.Start(
            new ProcessStartInfo("dotnet", [program])
            {
                WorkingDirectory = AppContext.BaseDirectory,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                StandardInputEncoding = new UTF8Encoding(false),
                StandardOutputEncoding = Encoding.UTF8,
            }
        )!;
    }
}
