using SensorProfile.Cli.Output;
using SensorProfile.Cli.Terminal;
using SensorProfile.Simulation;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>Writes a simulated night into an output folder, with progress.</summary>
internal static class SimulatedFrames
{
    public static IReadOnlyList<string> Write(
        Session session,
        CameraDescription camera,
        OutputFolder output,
        string subfolder,
        ulong seed
    ) =>
        session.Side.Watch(display =>
            output.Write(work =>
                Simulator.Write(
                    camera,
                    Path.Combine(work, subfolder),
                    seed,
                    progress: new Progress(display),
                    cancellation: session.Stop
                )
            )
        );

    private sealed class Progress(IProgressDisplay display) : IProgress<SimulationProgress>
    {
        public void Report(SimulationProgress value) =>
            display.Show("simulating", value.FramesWritten, value.Frames, 0);
    }
}
