using System.Text;
using SensorProfile.Desk.Asking;

namespace SensorProfile.Cli.LocalPage;

/// <summary>What a command says on the side, handed on line by line.</summary>
internal sealed class NoteWriter(IDeskWatcher? watcher) : TextWriter
{
    private const string Program = "sensorprofile: ";

    public override Encoding Encoding => Encoding.UTF8;

    /// <summary>The last line: of a command that fails, the reason.</summary>
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
