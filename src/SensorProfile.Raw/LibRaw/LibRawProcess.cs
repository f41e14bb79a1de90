using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace SensorProfile.Raw.LibRaw;

/// <summary>
/// A child process of this program that reads one file; it is ended when it exceeds its time or memory.
/// </summary>
internal sealed class LibRawProcess : IDisposable
{
    private const string Program = "sensorprofile";
    private const long OwnBytes = 256L << 20; // the program's own use before it reads anything, with a margin
    private static readonly TimeSpan mostTime = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan look = TimeSpan.FromMilliseconds(100);

    private readonly Process process;
    private readonly LibRawLimits limits;
    private readonly Timer guard;
    private volatile string reason = "";

    private LibRawProcess(Process process, LibRawLimits limits)
    {
        (this.process, this.limits) = (process, limits);
        long started = Stopwatch.GetTimestamp();
        guard = new Timer(_ => Guard(started), null, look, look);
    }

    /// <summary>Output of the child.</summary>
    public Stream Answer => process.StandardOutput.BaseStream;

    /// <summary>Why the child was ended, to append to a sentence; empty when it was not.</summary>
    public string Reason => reason;

    /// <summary>Starts the child; null when the program is not found.</summary>
    public static LibRawProcess? Start(IReadOnlyList<string> arguments, LibRawLimits limits)
    {
        if (Own() is not { } own)
            return null;
        var start = new ProcessStartInfo(own.Program, [.. own.Before, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true, // library warnings that nobody can act on
            UseShellExecute = false,
            CreateNoWindow = true,
        };
        start.Environment["TZ"] = "UTC"; // passes the camera's clock through unchanged
        if (Process.Start(start) is not { } process)
            return null;
        process.BeginErrorReadLine();
        return new LibRawProcess(process, limits);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        guard.Dispose();
        End();
        process.Dispose();
    }

    /// <summary>This program; under another host, such as a test, the one beside the library.</summary>
    private static (string Program, string[] Before)? Own()
    {
        if (
            Environment.ProcessPath is { } path
            && Path.GetFileNameWithoutExtension(path).Equals(Program, StringComparison.OrdinalIgnoreCase)
        )
            return (path, []);
        string beside = Path.Combine(AppContext.BaseDirectory, Program + ".dll");
        return File.Exists(beside) ? ("dotnet", [beside]) : null;
    }

    private void Guard(long started)
    {
        try
        {
            process.Refresh();
            if (process.TotalProcessorTime.TotalSeconds > limits.Seconds)
                End(string.Create(CultureInfo.InvariantCulture, $" (more than {limits.Seconds} s of work)"));
            else if (Stopwatch.GetElapsedTime(started) > mostTime)
                End(string.Create(CultureInfo.InvariantCulture, $" (more than {mostTime.TotalMinutes:0} minutes)"));
            else if (process.WorkingSet64 > limits.Bytes + OwnBytes)
                End(string.Create(CultureInfo.InvariantCulture, $" (more than {limits.Bytes >> 20} MiB of memory)"));
        }
        catch (Exception gone) when (gone is InvalidOperationException or Win32Exception or IOException)
        {
            // it has ended by itself, between two looks: what a timer throws would end this program
        }
    }

    private void End(string because = "")
    {
        try
        {
            if (process.HasExited)
                return;
            reason = because;
            process.Kill();
        }
        catch (Exception gone) when (gone is InvalidOperationException or Win32Exception)
        {
            // it has already ended
        }
    }
}
