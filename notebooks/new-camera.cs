#:project ../src/SensorProfile/SensorProfile.csproj
#:project ../src/SensorProfile.Simulation/SensorProfile.Simulation.csproj
#:project ../src/SensorProfile.Reporting/SensorProfile.Reporting.csproj
#:property PublishAot=false

using SensorProfile;
using SensorProfile.Characterisation;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Notebooks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;

NotebookPage page = new(
    "A new camera",
    "From a folder of frames to the numbers of a camera and a first decision. The frames are simulated, so the truth is "
        + "known; put the path of your own in place of the folder."
);

page.Cell(
    "Frames",
    "A small window of the Tarn-9M, the camera of the demo: bias frames, flat pairs up to white, darks of four exposures "
        + "at six temperatures."
);
string folder = Directory.CreateTempSubdirectory("new-camera-").FullName;
CameraDescription camera = DemoCameras.Tarn9M() with { Width = 240, Height = 180, ReadNoiseSpread = 0, Glow = [] };
int frames = Simulator.Write(camera, folder, seed: 1).Count;
page.Text($"{frames} frames.");

page.Cell("Measure", "What survey and characterise do. Without the law of every single pixel it is quicker.");
Inventory found = FrameInventory.Read([folder], new InventoryOptions());
CameraProfile profile = Characteriser.Run(found, new CharacterisationOptions { Quick = true }).Profile;
ModeProfile mode = profile.Modes[0];
Directory.Delete(folder, recursive: true);

page.Cell("Measured and true", "z is the difference over its standard uncertainty: within ±2 in 19 of 20 cases.");
IReadOnlyList<string> Row(string name, Measurement? measured, double truth) =>
    [
        name,
        measured is null
            ? "not measured"
            : $"{QuantityText.Number(measured.Value, measured.StandardUncertainty)} {QuantityText.Unit(measured.Unit)}",
        QuantityText.Number(truth, 5),
        measured is null ? "" : QuantityText.Number((measured.Value - truth) / measured.StandardUncertainty, 2),
    ];
page.Table(
    ["quantity", "measured", "true", "z"],
    [
        Row("gain", mode.Gain, camera.Gain),
        Row("read noise", mode.ReadNoise, camera.ReadNoise),
        Row(
            "dark current at the reference",
            mode.DarkCurrent?.RateAtReference,
            camera.DarkCurrent!.RateAtReference
                * Math.Pow(
                    2,
                    (mode.DarkCurrent!.ReferenceTemperature!.Value - camera.DarkCurrent.ReferenceTemperature)
                        / camera.DarkCurrent.DoublingTemperature!.Value
                )
        ),
        Row(
            "doubling temperature",
            mode.DarkCurrent?.DoublingTemperature,
            camera.DarkCurrent.DoublingTemperature!.Value
        ),
    ]
);

page.Cell("See it", "Figures of the report: the slope of the first is the gain, that of the second the doubling.");
page.ReportFigures(profile, "photon-transfer", "dark-current", "hot-pixels");

page.Cell("Decide", "How cold for lights of 300 s under a dark sky through a narrow filter, with 15 °C outside?");
page.Answer(
    SetpointAdvice.Find(profile, mode, new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.1) })
);

page.Write(args.FirstOrDefault());
