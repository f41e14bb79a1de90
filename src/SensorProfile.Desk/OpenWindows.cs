using Microsoft.AspNetCore.Components.Server.Circuits;
using SensorProfile.Desk.Measuring;

namespace SensorProfile.Desk;

/// <summary>Counts the windows that show the desk, which ends a while after the last one closed.</summary>
internal sealed class OpenWindows(DeskOptions options, MeasureJob job)
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1);
    private readonly Lock gate = new();
    private int open;
    private long closed;
    private bool everOpen;

    /// <summary>A listener for one window.</summary>
    public CircuitHandler Watch() => new Window(this);

    /// <summary>Completes when it is stopped, or when no window has been open for long enough and nothing is being
    /// measured.</summary>
    public async Task WaitForTheEnd(CancellationToken stop)
    {
        using PeriodicTimer timer = new(Look, options.Clock);
        while (await timer.WaitForNextTickAsync(stop).ConfigureAwait(false))
            if (IsOver())
                return;
    }

    private bool IsOver()
    {
        lock (gate)
            return everOpen && open == 0 && !job.IsRunning && options.Clock.GetElapsedTime(closed) >= options.Patience;
    }

    private void Count(int change)
    {
        lock (gate)
        {
            open += change;
            everOpen = true;
            closed = options.Clock.GetTimestamp();
        }
    }

    private sealed class Window(OpenWindows all) : CircuitHandler
    {
        public override Task OnCircuitOpenedAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            all.Count(1);
            return Task.CompletedTask;
        }

        public override Task OnCircuitClosedAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            all.Count(-1);
            return Task.CompletedTask;
        }
    }
}
