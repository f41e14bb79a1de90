using SensorProfile.Setup;

namespace SensorProfile.Desk.Asking;

/// <summary>The program behind the desk. The desk asks in the program's own command line, so that whatever it shows can
/// be had there too, in the same words.</summary>
internal interface IDeskDoor
{
    /// <summary>Runs a command and gives its answer. May be called from several threads.</summary>
    /// <param name="arguments">As they would be typed after the program's name.</param>
    /// <param name="watcher">Hears how far the work has come; null where nobody waits.</param>
    /// <param name="stop">Ends the work; nothing half-written is left.</param>
    /// <exception cref="OperationCanceledException">It was ended.</exception>
    DeskReply Ask(IReadOnlyList<string> arguments, IDeskWatcher? watcher, CancellationToken stop);

    /// <summary>The same as a line to copy into a terminal.</summary>
    string Line(IReadOnlyList<string> arguments);

    /// <summary>What the user's setup says for a profile; an empty one where there is none or it cannot be read.</summary>
    ObservingSetup Setup(string? profile);

    /// <summary>Writes rows of a capture table back with what was changed; the place is refused where frames lie.</summary>
    DeskReply SaveTable(CaptureChange change, CancellationToken stop);
}
