using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
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
        PlanQuestion question = settings.Question(profile, sets);
        PlanAnswer answer = DarksPlan.Find(profile, question);
        if (question.Lights.Count < sets.Count)
            answer = answer with { Findings = [.. answer.Findings, PlannedLights.TakenTogether(question.Lights)] };
        if (settings.Csv is { } csv)
            CsvFile.Write(csv, writer => DecisionTables.Write(answer, writer));
        return PageFolder.Complete(page, PlanDocument.Of(answer, settings.Csv), folder =>
            AnswerPage.Write(profile, answer, folder)
        );
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
        [Description("Sensor temperature at the end of the night, °C, when an uncooled camera follows the air.")]
        [TypeConverter(typeof(Number))]
        public double? Until { get; init; }

        [CommandOption("--night <FILE>")]
        [Description(
            "A table of the sensor's temperatures through the night, one a line: the time, a "
                + "comma, the °C. One line per light unless --lights says how many they are."
        )]
        public string? Night { get; init; }

        [CommandOption("--uncooled")]
        [Description("The camera has no cooler: the plan says when in the night to shoot each master.")]
        public bool Uncooled { get; init; }

        [CommandOption("--csv <FILE>")]
        [Description("Write the list as a table here too.")]
        public string? Csv { get; init; }

        /// <summary>What would pass unheard is refused.</summary>
        public void RefuseIgnored()
        {
            RefuseFrameOptions(LightPaths.Count > 0);
            if (LightPaths.Count > 0 && (Exposures.Length > 0 || Until is not null || Night is not null))
                throw CommandFailure.WrongCommandLine(
                    "With the folder of the lights the frames say their exposure and temperature: leave out "
                        + "--exposure, --until and --night; a capture table (--table) corrects the headers."
                );
            if (Night is not null && (Until is not null || Temperature is not null))
                throw CommandFailure.WrongCommandLine(
                    "--night says the temperatures from the first light to the last: leave out --temperature and "
                        + "--until."
                );
        }

        public PlanQuestion Question(CameraProfile profile, IReadOnlyList<FrameSet> sets) =>
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
                        : Typed(profile),
                Sky = SkyRate,
                Limits = Limits,
                Cooled = !Uncooled,
            };

        /// <summary>
        /// The sets of one exposure and setting are one stack, whatever the sensor did through the night.
        /// </summary>
        private PlannedLights FromDisk(FrameSet[] sets)
        {
            Frame[] frames = [.. sets.SelectMany(s => s.Frames).OrderBy(f => f.StartUtc ?? DateTimeOffset.MaxValue)];
            double[] temperatures = [.. frames.Select(f => f.TemperatureCelsius ?? Unknown(f))];
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
                Rejection = Rejects ? Rejection.SigmaClip : Rejection.None,
                Settings = sets[0].Settings,
            };
        }

        private PlannedLights[] Typed(CameraProfile profile)
        {
            if (
                Exposures.Length == 0
                && LightCount is null
                && Temperature is null
                && Until is null
                && Night is null
                && Dithers is null
                && !Rejects
                && WantedMode is null
            )
                return [];
            double[] night = Night is null ? [] : [.. TemperatureTable.Read(Night).Select(row => row.Celsius)];
            PlannedLights usual = PlannedLights.Usual(
                night.Length > 0 ? night[0] : Temperature ?? ReferenceOf(profile)
            );
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
                        Rejection = Rejects ? Rejection.SigmaClip : Rejection.None,
                        Settings = WantedMode,
                    }
                ),
            ];
        }

        private double ReferenceOf(CameraProfile profile) =>
            ModeChoice.Find(profile, WantedMode).DarkCurrent?.ReferenceTemperature
            ?? throw CommandFailure.WrongCommandLine(
                "This profile has no reference temperature: give --temperature, the sensor temperature of the "
                    + "lights."
            );

        private double Unknown(Frame frame) =>
            Temperature
            ?? throw CommandFailure.UnreadableInput(
                $"{frame.Name}: the sensor temperature of this light is not known; give --temperature, or a "
                    + "capture table (--table)."
            );
    }
}
