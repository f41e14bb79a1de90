#:project ../src/SensorProfile.Fits/SensorProfile.Fits.csproj
#:project ../src/SensorProfile/SensorProfile.csproj
#:project ../src/SensorProfile.Simulation/SensorProfile.Simulation.csproj
#:project ../src/SensorProfile.Reporting/SensorProfile.Reporting.csproj
#:property PublishAot=false

using SensorProfile;
using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Notebooks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

NotebookPage page = new(
    "Dark-current spectroscopy of hot pixels",
    "A hot pixel holds a defect that lets charge leak in, and each kind of defect has an energy of its own. How fast the "
        + "pixel brightens with temperature tells it. The method is that of R. D. McGrath, J. Doty, G. Lupino, G. Ricker "
        + "and J. Vallerga 1987, IEEE Trans. Electron Devices 34, 2555 (from memory), made with the camera's own darks."
);

page.Cell(
    "A sensor with three kinds of defects",
    "Energies of 0.56, 0.63 and 0.70 eV, each spread by 0.004 eV; ordinary pixels by depletion with some diffusion. No "
        + "law of these pixels is one that the program fits to them."
);
(double Energy, double Share)[] truth = [(0.56, 0.004), (0.63, 0.008), (0.70, 0.004)];
CameraDescription sensor = new()
{
    Name = "Tarn-9M",
    Serial = 5,
    Width = 240,
    Height = 180,
    Gain = 0.8,
    ReadNoise = 1.6,
    FullWell = 48000,
    BiasLevel = 600,
    DarkCurrent = new DarkCurrentParameters
    {
        RateAtReference = 0.01,
        ReferenceTemperature = -10,
        DiffusionShare = 0.15,
    },
    Physics = new SensorPhysics
    {
        Defects =
        [
            .. truth.Select(kind => new DefectPopulation
            {
                Share = kind.Share,
                Rate = 0.5,
                Slope = 1,
                Maximum = 20,
                Energy = kind.Energy,
                EnergySpread = 0.004,
            }),
        ],
    },
    Shots =
    [
        new()
        {
            Kind = FrameKind.Bias,
            Temperature = -10,
            Count = 10,
        },
        .. new[] { 0.05, 0.15, 0.3, 0.45, 0.6, 0.8, 1.2 }.Select(share => new Shot
        {
            Kind = FrameKind.Flat,
            Exposure = 10 * share,
            Level = 48000 * share,
            Temperature = -10,
            Count = 2,
        }),
        .. new[] { -25.0, -20, -15, -10, -5, 0 }.SelectMany(celsius =>
            new[] { 30.0, 120, 300 }.Select(seconds => new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = seconds,
                Temperature = celsius,
                Count = 4,
            })
        ),
    ],
};

page.Cell("Measure", "As characterise does, with the law of every pixel; then the maps that it writes.");
string folder = Directory.CreateTempSubdirectory("energies-").FullName;
Simulator.Write(sensor, Path.Combine(folder, "frames"), seed: 1);
CharacterisationResult result = Characteriser.Run(
    FrameInventory.Read([Path.Combine(folder, "frames")], new InventoryOptions()),
    new CharacterisationOptions()
);
MapFiles.Write(result, folder);
ModeProfile mode = result.Profile.Modes[0];
float[] Map(string name)
{
    using FitsFile file = FitsFile.Open(Path.Combine(folder, "maps", name));
    FitsHdu image = file.RequireFirstImage();
    float[] pixels = new float[image.Axes[0] * image.Axes[1]];
    image.ReadRows(0, pixels);
    return pixels;
}
float[] rate = Map("dark-rate.fits"),
    doubling = Map("doubling.fits"),
    doublingUncertainty = Map("doubling-uncertainty.fits");
Directory.Delete(folder, recursive: true);

page.Cell(
    "From doubling temperature to energy",
    "Generation through a level grows like T^1.5·exp(−E/kT), so at the reference temperature d ln I/dT = 1.5/T + E/kT² = "
        + "ln 2/ΔT₂, and E = kT²·ln 2/ΔT₂ − 1.5·kT with u(E) = kT²·ln 2/ΔT₂²·u(ΔT₂). Used are pixels 20 times as bright as "
        + "the typical one whose energy is known to 0.02 eV."
);
const double Boltzmann = 8.617333262e-5; // eV/K, CODATA 2018
double kelvin = mode.FixedPattern!.ReferenceTemperature!.Value + 273.15,
    typical = mode.DarkCurrent!.RateAtReference!.Value;
Measurement Energy(int pixel) =>
    new(
        Boltzmann * kelvin * kelvin * Math.Log(2) / doubling[pixel] - 1.5 * Boltzmann * kelvin,
        Boltzmann
            * kelvin
            * kelvin
            * Math.Log(2)
            / (doubling[pixel] * (double)doubling[pixel])
            * doublingUncertainty[pixel],
        "eV",
        1,
        "slope of the pixel's dark rate against temperature"
    );
Measurement[] energies =
[
    .. Enumerable
        .Range(0, rate.Length)
        .Where(i => rate[i] > 20 * typical && doubling[i] > 0 && doublingUncertainty[i] > 0)
        .Select(Energy)
        .Where(energy => energy.StandardUncertainty < 0.02),
];
page.Text(
    $"{energies.Length} hot pixels; their energies are uncertain by "
        + $"{QuantityText.Number(energies.Select(e => e.StandardUncertainty).Order().ElementAt(energies.Length / 2), 2)} eV "
        + "(median)."
);

page.Cell(
    "The spectrum",
    "Solid: the energies put in. Dashed: published levels, as the energy that generation through them needs, half of the "
        + "gap of 1.12 eV plus the distance of the level from its middle. All from memory: check them before you rely on "
        + "them."
);
const double Width = 0.01;
double[] edges = [.. Enumerable.Range(0, 37).Select(i => 0.46 + Width * i)];
double[] counts = [.. edges[..^1].Select(low => (double)energies.Count(e => e.Value >= low && e.Value < low + Width))];
NotebookPlot spectrum = new NotebookPlot("Apparent activation energy, eV", "Hot pixels in 0.01 eV").Steps(
    "measured",
    edges,
    counts
);
foreach ((double energy, _) in truth)
    spectrum.Mark(energy, $"put in: {QuantityText.Number(energy, 2)}", fromElsewhere: false);
(double Energy, string Name, string Source)[] published =
[
    (0.58, "gold, 0.54 eV below the band", "McGrath et al. 1987"),
    (
        0.67,
        "phosphorus and vacancy, 0.45 eV below the band",
        "J. R. Srour, C. J. Marshall, P. W. Marshall 2003, IEEE Trans. Nucl. Sci. 50, 653"
    ),
    (0.69, "divacancy, 0.43 eV below the band", "the same"),
];
foreach ((double energy, string name, _) in published)
    spectrum.Mark(energy, name.Split(',')[0], fromElsewhere: true);
page.Plot(spectrum, "Apparent activation energies of the hot pixels at the reference temperature.");
page.Table(
    ["level", "energy, eV", "source (from memory)"],
    published.Select(p => (IReadOnlyList<string>)[p.Name, QuantityText.Number(p.Energy, 2), p.Source])
);

page.Cell(
    "Against the truth",
    "Mean of the energies within 0.03 eV of each that was put in; z is its distance from there over its standard error, within ±2 in 19 of 20 cases."
);
page.Table(
    ["put in, eV", "pixels", "mean, eV", "z", "spread, eV", "mean uncertainty, eV"],
    truth.Select(kind =>
    {
        Measurement[] near = [.. energies.Where(e => Math.Abs(e.Value - kind.Energy) < 0.03)];
        double mean = near.Average(e => e.Value),
            spread = Math.Sqrt(near.Sum(e => (e.Value - mean) * (e.Value - mean)) / (near.Length - 1));
        return (IReadOnlyList<string>)
            [
                QuantityText.Number(kind.Energy, 2),
                $"{near.Length}",
                QuantityText.Number(mean, spread / Math.Sqrt(near.Length)),
                QuantityText.Number((mean - kind.Energy) / (spread / Math.Sqrt(near.Length)), 2),
                QuantityText.Number(spread, 2),
                QuantityText.Number(near.Average(e => e.StandardUncertainty), 2),
            ];
    })
);
page.Text(
    "The spread is what the uncertainty of a single pixel explains: the lines are narrower than these darks can show. The "
        + "energies are called apparent because the rest of the pixel, which has a law of its own, is in them."
);

page.Write(args.FirstOrDefault());
