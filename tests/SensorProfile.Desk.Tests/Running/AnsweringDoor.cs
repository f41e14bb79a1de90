using System.Collections.Concurrent;
using SensorProfile.Desk.Asking;
using SensorProfile.Setup;

namespace SensorProfile.Desk.Tests.Running;

/// <summary>A door behind which nothing is worked out: what is asked is written down.</summary>
internal sealed class AnsweringDoor : IDeskDoor
{
    /// <summary>What was asked, in order.</summary>
    public ConcurrentQueue<string> Asked { get; } = new();

    /// <summary>Runs while the first question is being answered.</summary>
    public Action? DuringTheFirst { get; set; }

    public DeskReply Ask(IReadOnlyList<string> arguments, IDeskWatcher? watcher, CancellationToken stop)
    {
        Asked.Enqueue(Line(arguments));
        if (Asked.Count == 1)
            DuringTheFirst?.Invoke();
        return new DeskReply(arguments, 0, null, "");
    }

    public string Line(IReadOnlyList<string> arguments) => string.Join(' ', arguments);

    public ObservingSetup Setup(string? profile) => new();

    public DeskReply SaveTable(CaptureChange change, CancellationToken stop) => new([], 0, null, "");
}
