using SensorProfile.Setup;

namespace SensorProfile.Desk.Asking;

/// <summary>The program behind the desk. The desk asks through the program's own command line, so that whatever it shows
/// can be had there too, in the same words.</summary>
internal interface IDeskDoor
{
    /// <summary>Runs a command and gives its answer. May be called from several threads.</summary>
    /// <param name="arguments">As they would be typed after the program's name.</param>
    /// <param name="watcher">Receives progress; null where nobody waits.</param>
    /// <param name="stop">Ends the work; nothing half-written is left.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    DeskReply Ask(IReadOnlyList<string> arguments, IDeskWatcher? watcher, CancellationToken stop);

    /// <summary>The command as a line to copy into a terminal.</summary>
    string Line(IReadOnlyList<string> arguments);

    /// <summary>What the user's setup says for a profile; an empty one where there is none or it cannot be read.</summary>
    ObservingSetup Setup(string? profile);

    /// <summary>Writes a change into the capture table; a place among the frames is refused.</summary>
    DeskReply SaveTable(CaptureChange change, CancellationToken stop);
}
