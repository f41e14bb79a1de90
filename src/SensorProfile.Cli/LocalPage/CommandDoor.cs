using SensorProfile.Cli.Defaults;
using SensorProfile.Cli.Terminal;
using SensorProfile.Desk.Asking;
using SensorProfile.Reporting.Answers;
using SensorProfile.Setup;

namespace SensorProfile.Cli.LocalPage;

/// <summary>Lets the desk use the command line: the same parser, the same commands, the same answers.</summary>
internal sealed class CommandDoor(Session terminal) : IDeskDoor
{
    public DeskReply Ask(IReadOnlyList<string> arguments, IDeskWatcher? watcher, CancellationToken stop)
    {
        AnswerDocument? answer = null;
        NoteWriter notes = new(watcher);
        Session session = terminal with
        {
            Results = new ResultStream(() => Stream.Null, isTerminal: false),
            Side = new StandardErrorStream(notes, isTerminal: false, TimeProvider.System)
            {
                Display = new WatchedStages(watcher, TimeProvider.System),
            },
            Stop = stop,
            Person = null,
            Taker = reply => answer = reply,
            Remembered = RememberedOptions.Nothing,
        };
        int code = CommandLine.Run([.. arguments], session);
        if (code == ExitCodes.Interrupted)
            throw new OperationCanceledException(stop);
        return new DeskReply(arguments, code, answer, answer is null ? notes.LastLine : "");
    }

    public string Line(IReadOnlyList<string> arguments) =>
        "sensorprofile " + string.Join(' ', arguments.Select(Quoted.Of));

    public ObservingSetup Setup(string? profile)
    {
        try
        {
            return SetupPlace.Find(null, profile) is { } file ? SetupFile.Read(file) : new ObservingSetup();
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or CommandFailure or SetupFormatException)
        {
            return new ObservingSetup(); // each answer reports what is wrong with the setup
        }
    }

    public DeskReply SaveTable(CaptureChange change, CancellationToken stop)
    {
        NoteWriter notes = new(null);
        string[] nothing = [];
        try
        {
            CorrectedTable.Write(
                change,
                terminal with
                {
                    Side = new StandardErrorStream(notes, isTerminal: false, TimeProvider.System)
                    {
                        Display = new WatchedStages(null, TimeProvider.System),
                    },
                    Stop = stop,
                }
            );
            return new DeskReply(nothing, ExitCodes.Answered, null, "");
        }
        catch (CommandFailure problem)
        {
            return new DeskReply(nothing, problem.ExitCode, null, problem.Message);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return new DeskReply(nothing, ExitCodes.UnwritableOutput, null, FailureReport.OneLine(problem.Message));
        }
    }
}
