using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Tests.Characterisation;

/// <summary>A synthetic camera's night in a folder of its own, with its truth; the folder goes with it.</summary>
internal sealed class SimulatedSession : IDisposable
{
    public SimulatedSession(CameraDescription camera, ulong seed, int threads = -1)
    {
        Folder = Path.Combine(Path.GetTempPath(), "sensorprofile-" + Guid.NewGuid().ToString("N"));
        Camera = camera;
        Truth = Simulator.WriteTelling(
            camera,
            Folder,
            seed,
            new SimulationOptions { WriteTruth = false, Threads = threads }
        );
    }

    public string Folder { get; }

    public CameraDescription Camera { get; }

    public SimulationTruth Truth { get; }

    public CharacterisationResult Characterise(int? threads = null, CaptureTable? table = null, bool quick = true) =>
        Characteriser.Run(
            FrameInventory.Read([Folder], new InventoryOptions { Table = table }),
            new CharacterisationOptions
            {
                Threads = threads,
                Quick = quick,
                Clock = FixedClock.Instance,
            }
        );

    public ModeProfile Mode() => Characterise().Profile.Modes[0];

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private sealed class FixedClock : TimeProvider
    {
        public static FixedClock Instance { get; } = new();

        public override DateTimeOffset GetUtcNow() => new(2031, 10, 15, 0, 0, 0, TimeSpan.Zero);
    }
}
