using System.Runtime.InteropServices;

namespace SensorProfile.Cli;

/// <summary>Ctrl-C asks the work to stop so that it can tidy up; a second Ctrl-C ends the program at once.</summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource source = new();
    private readonly PosixSignalRegistration[] registrations;

    public Interruption()
    {
        registrations =
        [
            PosixSignalRegistration.Create(PosixSignal.SIGINT, Ask),
            PosixSignalRegistration.Create(PosixSignal.SIGTERM, Ask),
        ];
    }

    public CancellationToken Token => source.Token;

    public void Dispose()
    {
        foreach (PosixSignalRegistration registration in registrations)
            registration.Dispose();
        source.Dispose();
    }

    private void Ask(PosixSignalContext context)
    {
        if (source.IsCancellationRequested)
            return;
        context.Cancel = true;
        source.Cancel();
    }
}
