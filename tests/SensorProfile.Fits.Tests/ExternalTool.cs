using System.Diagnostics;

namespace SensorProfile.Fits.Tests;

/// <summary>Runs a program of the system, with time enough for a slow machine.</summary>
internal static class ExternalTool
{
    private const int PatienceMilliseconds = 120_000;

    public static bool MustBeThere => Environment.GetEnvironmentVariable("CI") == "true";

    /// <summary>Whether a program is there and, with arguments to try, ends well.</summary>
    public static bool Works(string program, params string[] trial)
    {
        try
        {
            return Run(program, trial).ExitCode == 0 || trial.Length == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    public static (int ExitCode, string Output) Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        if (!process.WaitForExit(PatienceMilliseconds))
        {
            process.Kill();
            throw new TimeoutException($"{program} did not end.");
        }

        return (process.ExitCode, output + errors.Result);
    }
}
