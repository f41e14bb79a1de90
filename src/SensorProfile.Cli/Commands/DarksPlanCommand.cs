using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Tables;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>darks plan</c>: which darks do I shoot, how many?</summary>
internal sealed class DarksPlanCommand : AnswerCommand<DarksPlanCommand.Settings>
{
    protected override string Name => "darks plan";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        settings.RefuseIgnored();
        if (settings.Csv is { } target)
            OutputFile.Check(
                target,
                settings.Overwrite,
                "--csv",
                [ProfileReading.FileOf(settings.Profile), settings.Table, .. settings.LightPaths]
            );
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        IReadOnlyList<FrameSet> sets =
            settings.LightPaths.Count > 0
                ? SetReading.Read(
                    session,
                    settings.LightPaths,
                    FrameKind.Light,
                    settings.Table,
                    settings.NamesSay,
                    out _
                )
                : [];
        AssumedTemperature? taken = settings.Assumed(profile, sets);
        (SkyRate? sky, Finding[] ofSky) =
            sets.Count > 0 ? SkyReading.OfLights(session, settings, profile, sets, []) : (settings.SkyRate, []);
        PlanQuestion question = settings.Question(sets, taken, sky);
        PlanAnswer answer = DarksPlan.Find(profile, question);
        List<Finding> found = [.. ofSky, .. SetPoints.NotHeld(sets)];
        if (taken is not null)
            found.Add(taken.ToFinding());
        if (question.Lights.Count < sets.Count)
            found.Add(PlannedLights.TakenTogether(question.Lights));
        if (settings.Csv is { } csv)
            CsvFile.Write(csv, writer => DecisionTables.Write(answer, writer));
        AnswerDocument reply = PlanDocument.Compose(answer, settings.Csv, taken, found) with
        {
            Assumptions =
            [
                .. StackAssumptions.Of(settings.Stack, sky, settings.Loss is not null),
                .. settings.AssumedLights(question),
                .. taken is null
                    ? Array.Empty<AnswerAssumption>()
                    : [StackAssumptions.Temperature(taken.Celsius, AssumptionSource.Profile)],
            ],
        };
        return PageFolder.Complete(page, reply, folder => AnswerPage.Write(profile, answer, reply, folder));
    }

    internal sealed class Settings : StackSettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("profile.json, or the folder that holds it.")]
        public string Profile { get; init; } = "";

        [CommandOption("--exposure <S>")]
        [Description("Exposure of the planned lights, s; may be given several times.")]
        public string[] Exposures { get; init; } = [];

        [CommandOption("--until <C>")]
        [Description("Sensor temperature at the end of the night, °C, for an uncooled camera, which follows the air.")]
        [TypeConverter(typeof(Number))]
        public double? Until { get; init; }

        [CommandOption("--night <FILE>")]
        [Description(
            "A table of the sensor's temperatures through the night, one per line: time, comma, "
                + "°C. One line per light, unless --lights gives their number."
        )]
        public string? Night { get; init; }

        [CommandOption("--uncooled")]
        [Description("The camera has no cooler: the plan says when in the night to shoot each master.")]
        public bool Uncooled { get; init; }

        [CommandOption("--csv <FILE>")]
        [Description("Also write the list as a table to this file.")]
        public string? Csv { get; init; }

        /// <summary>Refuses options that would be ignored.</summary>
        public void RefuseIgnored()
        {
            RefuseFrameOptions(LightPaths.Count > 0);
            if (ThreeSkies)
                throw CommandFailure.WrongCommandLine(
                    "A plan is for one sky: leave out --three-skies, and give yours with --sky."
                );
            if (LightPaths.Count > 0 && (Exposures.Length > 0 || Until is not null || Night is not null))
                throw CommandFailure.WrongCommandLine(
                    "With the folder of the lights the frames give their exposure and temperature: leave out "
                        + "--exposure, --until and --night; a capture table (--table) corrects the headers."
                );
            if (Night is not null && (Until is not null || Temperature is not null))
                throw CommandFailure.WrongCommandLine(
                    "--night gives the temperatures from the first light to the last: leave out --temperature and "
                        + "--until."
                );
        }

        public PlanQuestion Question(IReadOnlyList<FrameSet> sets, AssumedTemperature? taken, SkyRate? sky) =>
            new()
            {
                Lights =
                    sets.Count > 0
                        ?
                        [
                            .. sets.Select(Completed)
                                .GroupBy(s => (s.Width, s.Height, s.Settings, s.ExposureSeconds, s.Label))
                                .Select(g => FromDisk([.. g])),
                        ]
                        : Typed(taken),
                Sky = sky,
                Limits = Limits,
                Cooled = !Uncooled,
            };

        /// <summary>
        /// Sets with the same exposure and settings form one stack, however the sensor temperature moved through the night.
        /// </summary>
        private PlannedLights FromDisk(FrameSet[] sets)
        {
            Frame[] frames = [.. sets.SelectMany(s => s.Frames).OrderBy(f => f.StartUtc ?? DateTimeOffset.MaxValue)];
            double[] temperatures =
            [
                .. SetPoints.TemperaturesOf(frames).Select((celsius, i) => celsius ?? Unknown(frames[i])),
            ];
            return new PlannedLights
            {
                ExposureSeconds = sets[0].ExposureSeconds
                    ?? throw CommandFailure.UnreadableInput(
                        $"{frames[0].Name}: the exposure of these lights is not known; give it in a capture table "
                            + "(--table)."
                    ),
                StartCelsius = temperatures[0],
                EndCelsius = temperatures[^1],
                Temperatures = temperatures,
                Lights = frames.Length,
                DitherPositions = Dithers ?? 1,
                Rejection = Rejection,
                Settings = sets[0].Settings,
            };
        }

        /// <summary>The temperature to plan for when none was given; null when lights or options say it.</summary>
        public AssumedTemperature? Assumed(CameraProfile profile, IReadOnlyList<FrameSet> sets) =>
            sets.Count > 0 || Temperature is not null || Night is not null
                ? null
                : AssumedTemperature.Choose(
                    profile,
                    ModeChoice.Find(profile, WantedMode),
                    Stack with
                    {
                        ExposureSeconds =
                            Exposures.Length > 0 ? Exposures.Max(Number.Parse) : new StackDescription().ExposureSeconds,
                    },
                    !Uncooled
                );

        private PlannedLights[] Typed(AssumedTemperature? taken)
        {
            double[] night = Night is null ? [] : [.. TemperatureTable.Read(Night).Select(row => row.Celsius)];
            PlannedLights usual = PlannedLights.Usual(night.Length > 0 ? night[0] : Temperature ?? taken!.Celsius);
            IEnumerable<double> exposures =
                Exposures.Length > 0 ? Exposures.Select(Number.Parse) : [usual.ExposureSeconds];
            return
            [
                .. exposures.Select(seconds =>
                    usual with
                    {
                        ExposureSeconds = seconds,
                        EndCelsius = night.Length > 0 ? night[^1] : Until,
                        Temperatures = night,
                        Lights = LightCount ?? (night.Length > 0 ? night.Length : usual.Lights),
                        DitherPositions = Dithers ?? usual.DitherPositions,
                        Rejection = Rejection,
                        Settings = WantedMode,
                    }
                ),
            ];
        }

        /// <summary>Exposure and number of the lights, when they were not given.</summary>
        public IEnumerable<AnswerAssumption> AssumedLights(PlanQuestion question)
        {
            PlannedLights planned = question.Lights[0];
            if (LightPaths.Count > 0)
                yield break;
            if (Exposures.Length == 0)
                yield return AnswerAssumption.Option(
                    "exposure",
                    planned.ExposureSeconds,
                    given: false,
                    $"lights of {QuantityText.Number(planned.ExposureSeconds)} s"
                );
            if (LightCount is null && Night is null)
                yield return AnswerAssumption.Option(
                    "lights",
                    planned.Lights,
                    given: false,
                    $"{QuantityText.Count(planned.Lights)} lights"
                );
        }

        private double Unknown(Frame frame) =>
            Temperature
            ?? throw CommandFailure.UnreadableInput(
                $"{frame.Name}: the sensor temperature of this light is not known; give --temperature, or a "
                    + "capture table (--table)."
            );
    }
}
