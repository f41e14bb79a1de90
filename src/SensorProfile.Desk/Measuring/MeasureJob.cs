using SensorProfile.Desk.Asking;

namespace SensorProfile.Desk.Measuring;

/// <summary>The characterisation, of which only one runs at a time; shared by all windows.</summary>
internal sealed class MeasureJob(IDeskDoor door, DeskOptions options) : IDeskWatcher, IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);
    private readonly Lock gate = new();
    private readonly List<DeskProgress> stages = [];
    private readonly List<string> notes = [];
    private CancellationTokenSource? running;
    private long told;

    /// <summary>Something changed; called from any thread.</summary>
    public event Action? Changed;

    /// <summary>State of the measurement.</summary>
    public MeasureState State { get; private set; } = MeasureState.Nothing;

    /// <summary>Whether it is running.</summary>
    public bool IsRunning => State is MeasureState.Running or MeasureState.Cancelling;

    /// <summary>The last order; null before the first.</summary>
    public MeasureOrder? Order { get; private set; }

    /// <summary>The answer; null before there is one.</summary>
    public DeskReply? Reply { get; private set; }

    /// <summary>The stages so far, the current one last.</summary>
    public IReadOnlyList<DeskProgress> Stages
    {
        get
        {
            lock (gate)
                return [.. stages];
        }
    }

    /// <summary>Notes made on the way, such as files left out.</summary>
    public IReadOnlyList<string> Notes
    {
        get
        {
            lock (gate)
                return [.. notes];
        }
    }

    /// <summary>Starts a measurement; does nothing while one is running.</summary>
    public void Begin(MeasureOrder order)
    {
        CancellationToken stop;
        lock (gate)
        {
            if (IsRunning)
                return;
            stages.Clear();
            notes.Clear();
            Order = order;
            Reply = null;
            State = MeasureState.Running;
            running?.Dispose();
            running = new CancellationTokenSource();
            stop = running.Token;
        }
        Changed?.Invoke();
        _ = Task.Factory.StartNew(
            () => Work(order, stop),
            CancellationToken.None,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default
        );
    }

    /// <summary>Asks it to stop; what it has written so far is removed.</summary>
    public void Cancel()
    {
        lock (gate)
        {
            if (State != MeasureState.Running)
                return;
            State = MeasureState.Cancelling;
            running?.Cancel();
        }
        Changed?.Invoke();
    }

    public void Dispose() => running?.Dispose();

    public void Heard(DeskProgress progress)
    {
        bool tell;
        lock (gate)
        {
            bool goesOn = stages.Count > 0 && stages[^1].Stage == progress.Stage;
            if (goesOn)
                stages[^1] = progress;
            else
                stages.Add(progress);
            tell = !goesOn || options.Clock.GetElapsedTime(told) >= Pause;
            if (tell)
                told = options.Clock.GetTimestamp();
        }
        if (tell)
            Changed?.Invoke();
    }

    public void Heard(string note)
    {
        lock (gate)
            notes.Add(note);
        Changed?.Invoke();
    }

    private void Work(MeasureOrder order, CancellationToken stop)
    {
        try
        {
            DeskReply reply = door.Ask(order.Arguments, this, stop);
            lock (gate)
            {
                Reply = reply;
                State = reply.Answer is null ? MeasureState.Failed : MeasureState.Done;
            }
        }
        catch (OperationCanceledException)
        {
            lock (gate)
                State = MeasureState.Cancelled;
        }
        Changed?.Invoke();
    }
}

/// <summary>State of a measurement.</summary>
internal enum MeasureState
{
    Nothing,
    Running,
    Cancelling,
    Cancelled,
    Failed,
    Done,
}
