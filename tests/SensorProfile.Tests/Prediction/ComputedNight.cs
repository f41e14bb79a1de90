using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Tests.Prediction;

/// <summary>
/// A synthetic camera's night, characterised with its maps in a folder, and the true dark of every pixel at any
/// temperature and exposure.
/// </summary>
internal sealed class ComputedNight : IDisposable
{
    private readonly SimulatedNight night;

    public ComputedNight(CameraDescription camera, ulong seed = 3)
    {
        Folder = Path.Combine(Path.GetTempPath(), "sensorprofile-" + Guid.NewGuid().ToString("N"));
        night = new SimulatedNight(camera, seed);
        string frames = Path.Combine(Folder, "frames");
        Simulator.Write(camera, frames, seed, new SimulationOptions { WriteTruth = false });
        CharacterisationResult result = Characteriser.Run(
            FrameInventory.Read([frames], new InventoryOptions()),
            new CharacterisationOptions { Clock = TimeProvider.System }
        );
        Directory.Delete(frames, recursive: true);
        MapFiles.Write(result, Folder);
        Profile = result.Profile;
    }

    public string Folder { get; }

    public CameraProfile Profile { get; }

    public ModeProfile Mode => Profile.Modes[0];

    public DarkPredictionProfile Trials => Mode.FixedPattern!.DarkPrediction!;

    public string Maps => Path.Combine(Folder, "maps");

    public DarkPredictionAnswer Compute(double celsius, double seconds) =>
        DarkPrediction.Compute(
            Profile,
            Mode,
            new DarkPredictionQuestion
            {
                TemperatureCelsius = celsius,
                ExposureSeconds = seconds,
                MapsFolder = Maps,
            }
        );

    /// <summary>Mean of infinitely many darks, ADU.</summary>
    public double[] TrueDark(double celsius, double seconds)
    {
        float[] bias = TrueMaps.BiasLevel(night.Sensor),
            rate = TrueMaps.DarkRate(night.Sensor, celsius, seconds);
        return [.. bias.Zip(rate, (b, r) => b + (double)r * seconds / night.Camera.Gain)];
    }

    /// <summary>Whether a pixel is hot, in the glow, or neither.</summary>
    public string[] TrueKinds(double celsius, double seconds)
    {
        byte[] defects = TrueMaps.Defects(night.Sensor);
        float[] glow = TrueMaps.Glow(night.Sensor, celsius, seconds);
        double typical = night.Camera.DarkCurrent!.RateAtReference;
        return
        [
            .. defects.Select(
                (d, i) =>
                    (d & (byte)DefectClasses.Hot) != 0 ? "hot"
                    : glow[i] > typical ? "glow"
                    : "typical"
            ),
        ];
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
