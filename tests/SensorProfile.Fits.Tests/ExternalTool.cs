using System.Diagnostics;

namespace SensorProfile.Fits.Tests;

/// <summary>Runs a program of the system, with time enough for a slow machine.</summary>
internal static class ExternalTool
{
    private const int PatienceMilliseconds = 120_000;

    public static bool MustBeThere => Environment.GetEnvironmentVariable("CI") == "true";

    public static bool Exists(string program, params string[] arguments)
    {
        try
        {
            Run(program, arguments);
            return true;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    public static (int ExitCode, string Output) Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
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

/// <summary>A test that needs a program: skipped aloud without it, failed when CI=true.</summary>
public sealed class NeedsProgramFactAttribute : FactAttribute
{
    public NeedsProgramFactAttribute(string program, string package)
    {
        if (!ExternalTool.MustBeThere && !ExternalTool.Exists(program)) Skip = $"{program} is not installed (Debian package {package}).";
    }
}

/// <summary>A test that needs astropy in the system's Python: skipped aloud without it, failed when CI=true.</summary>
public sealed class NeedsAstropyFactAttribute : FactAttribute
{
    public const string Python = "/usr/bin/python3";

    public NeedsAstropyFactAttribute()
    {
        if (ExternalTool.MustBeThere) return;
        if (!File.Exists(Python) || ExternalTool.Run(Python, "-c", "import astropy").ExitCode != 0) Skip = "astropy is not installed (Debian package python3-astropy).";
    }
}
