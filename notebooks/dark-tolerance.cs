#:project ../src/SensorProfile/SensorProfile.csproj
#:project ../src/SensorProfile.Reporting/SensorProfile.Reporting.csproj
#:property PublishAot=false

using SensorProfile;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting.Notebooks;

NotebookPage page = new(
    "How far off may my darks be?",
    "The trade says ±5 °C (common practice, no source). It depends on the stack: on dithering more than on anything else. "
        + "The profile is that of the demo's report; put the path of your own in its place."
);

page.Cell("The camera", "A profile that was measured before.");
CameraProfile profile = ProfileFile.Read(page.Beside("../reports/profile.json"));
ModeProfile mode = profile.Modes[0];

page.Cell("One stack", "40 lights of 300 s at −10 °C, not dithered, under a suburban sky through a narrow filter.");
ToleranceQuestion still = new()
{
    ExposureSeconds = 300,
    Lights = 40,
    TemperatureCelsius = -10,
    Sky = SkyRate.Given(0.5),
    DitherPositions = 1,
};
page.Answer(DarkTolerance.Find(profile, mode, still));

page.Cell("More dither positions", "The same stack, dithered; samples that stand out by 3 sigma are rejected.");
int[] positions = [1, 2, 3, 5, 10, 20, 40];
ToleranceAnswer[] dithered =
[
    .. positions.Select(k =>
        DarkTolerance.Find(
            profile,
            mode,
            still with
            {
                DitherPositions = k,
                Rejection = k > 2 ? Rejection.SigmaClip : Rejection.None,
            }
        )
    ),
];
NotebookPlot Against(string what, IEnumerable<double> values, IEnumerable<ToleranceAnswer> answers) =>
    new NotebookPlot(what, "Darks may be off by, °C") { LogarithmicAcross = true, LogarithmicUp = true }
        .Points("warmer", Known(values, answers, "toleranceWarmer"))
        .Points("colder", Known(values, answers, "toleranceColder"))
        .Level(5, "rule of thumb: 5 °C (common practice, no source)");
IEnumerable<(double, Measurement)> Known(
    IEnumerable<double> values,
    IEnumerable<ToleranceAnswer> answers,
    string name
) =>
    values
        .Zip(answers)
        .Where(p => p.Second.Quantities[name] is not null)
        .Select(p => (p.First, p.Second.Quantities[name]!));
page.Plot(
    Against("Dither positions", positions.Select(k => (double)k), dithered),
    "How far off the darks may be, against the number of dither positions. Two positions without rejection are worse than "
        + "one: a hot pixel is halved, but stands in two places. From three on rejection takes it out, and the glow rules. "
        + "Bars are of 95 %."
);

page.Cell("Longer lights", "20 positions; the whole exposure stays 200 minutes.");
double[] seconds = [60, 120, 300, 600];
ToleranceAnswer[] longer =
[
    .. seconds.Select(t =>
        DarkTolerance.Find(
            profile,
            mode,
            still with
            {
                ExposureSeconds = t,
                Lights = (int)(12000 / t),
                DitherPositions = 20,
                Rejection = Rejection.SigmaClip,
            }
        )
    ),
];
page.Plot(
    Against("Exposure of a light, s", seconds, longer),
    "The same for stacks of 200 minutes in lights of different length, dithered over 20 positions."
);

page.Write(args.FirstOrDefault());
