using System.Text;
using SensorProfile.Desk.Asking;

namespace SensorProfile.Cli.LocalPage;

/// <summary>Passes on, line by line, what a command writes to standard error.</summary>
internal sealed class NoteWriter(IDeskWatcher? watcher) : TextWriter
{
    private const string Program = "sensorprofile: ";

    public override Encoding Encoding => Encoding.UTF8;

    /// <summary>The last line; when a command fails, it is the reason.</summary>
    public string LastLine { get; private set; } = "";

    public override void WriteLine(string? value)
    {
        string line = value ?? "";
        if (line.StartsWith(Program, StringComparison.Ordinal))
            LastLine = line[Program.Length..];
        else
            watcher?.Heard(line);
    }
}
