#:project ../src/SensorProfile/SensorProfile.csproj
#:project ../src/SensorProfile.Simulation/SensorProfile.Simulation.csproj
#:project ../src/SensorProfile.Reporting/SensorProfile.Reporting.csproj
#:property PublishAot=false

using SensorProfile;
using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting.Notebooks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

NotebookPage page = new(
    "Four years of one sensor",
    "The club measures its Tarn-9M each October. What has changed, by how much beyond the errors, and what has to be "
        + "taken again? The ageing is simulated, so the truth is known."
);

page.Cell("The sensor", "Its dark current grows by 4 % a year, a patch of hot pixels spreads near one corner.");
Shot[] shots =
[
    new()
    {
        Kind = FrameKind.Bias,
        Temperature = -5,
        Count = 10,
    },
    .. new[] { 0.05, 0.15, 0.3, 0.45, 0.6, 0.8, 1.2 }.Select(share => new Shot
    {
        Kind = FrameKind.Flat,
        Exposure = 10 * share,
        Level = 48000 * share,
        Temperature = -5,
        Count = 2,
    }),
    .. new[] { -15.0, -5, 5 }.SelectMany(celsius =>
        new[] { 30.0, 120, 300 }.Select(seconds => new Shot
        {
            Kind = FrameKind.Dark,
            Exposure = seconds,
            Temperature = celsius,
            Count = 4,
        })
    ),
];
CameraDescription sensor = DemoCameras.Tarn9M() with
{
    Width = 240,
    Height = 180,
    Glow = [],
    Shots = shots,
    Ageing = new Ageing
    {
        DarkGrowth = 0.04,
        NewHotShare = 0.0005,
        HealedShare = 0.03,
        Patch = new HotPatch
        {
            X = 26,
            Y = 150,
            RadiusPerYear = 5,
            Density = 0.25,
            Rate = 0.4,
        },
    },
};

page.Cell("Four Octobers", "Each is measured at one reference temperature and kept with its maps.");
string archive = Directory.CreateTempSubdirectory("four-years-").FullName;
foreach (int year in new[] { 0, 1, 2, 3 })
{
    string frames = Path.Combine(archive, "frames");
    Simulator.Write(sensor with { AgeYears = year }, frames, seed: (ulong)(year + 1));
    CharacterisationResult result = Characteriser.Run(
        FrameInventory.Read([frames], new InventoryOptions()),
        new CharacterisationOptions { Quick = true, ReferenceTemperature = -5 }
    );
    string kept = Path.Combine(archive, $"year-{year}");
    MapFiles.Write(result, kept);
    ProfileFile.Write(Path.Combine(kept, "profile.json"), result.Profile);
    Directory.Delete(frames, recursive: true);
}

page.Cell("Compare", "What the drift command says.");
DriftAnswer drift = DriftComparison.Run(ProfileArchive.Read([archive]).Profiles);
Directory.Delete(archive, recursive: true);
page.Answer(drift);

page.Cell("Against the truth", "The growth of the ordinary pixels' dark current, per year.");
page.Table(
    ["quantity", "measured, per year", "over the first year, %", "true, %"],
    drift
        .Trends.Where(trend => trend.Quantity is "darkRate" or "darkRateByPixel")
        .Select(trend =>
            (IReadOnlyList<string>)
                [
                    trend.Quantity,
                    $"{QuantityText.Number(trend.PerYear.Value, trend.PerYear.StandardUncertainty)} {trend.PerYear.Unit}",
                    QuantityText.Number(
                        100 * trend.PerYear.Value / trend.Points[0].Value.Value,
                        100 * trend.PerYear.StandardUncertainty / trend.Points[0].Value.Value
                    ),
                    "4 (compound)",
                ]
        )
);

page.Write(args.FirstOrDefault());
