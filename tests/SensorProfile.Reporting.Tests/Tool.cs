using System.Diagnostics;

namespace SensorProfile.Reporting.Tests;

/// <summary>Runs a command and gives what it printed.</summary>
internal static class Tool
{
    public static string Run(string command, params string[] arguments)
    {
        var start = new ProcessStartInfo(command, arguments)
        {
            RedirectStandardOutput = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return output;
    }
}
