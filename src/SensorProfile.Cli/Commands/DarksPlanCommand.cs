using System.ComponentModel;
using SensorProfile.Cli.Output;
using SensorProfile.Cli.Replies;
using SensorProfile.Decisions;
using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>darks plan</c>: which darks do I shoot, how many?</summary>
internal sealed class DarksPlanCommand : AnswerCommand<DarksPlanCommand.Settings>
{
    protected override string Name => "darks plan";

    protected override Reply Answer(Session session, Settings settings)
    {
        if (settings.LightPaths.Count > 0 && (settings.Exposures.Length > 0 || settings.Until is not null))
            throw CommandFailure.WrongCommandLine("With the folder of the lights the frames say their exposure and temperature: leave out --exposure and --until; a capture table (--table) corrects the headers.");
        if (settings.Csv is { } target) OutputFile.Check(target, settings.Overwrite, "--csv", [ProfileReading.FileOf(settings.Profile), settings.Table, .. settings.LightPaths]);
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        IReadOnlyList<FrameSet> sets = settings.LightPaths.Count > 0 ? SetReading.Read(session, settings.LightPaths, FrameKind.Light, settings.Table, settings.NamesSay, out _) : [];
        PlanAnswer answer = DarksPlan.Find(profile, settings.Question(profile, sets));
        if (settings.Csv is { } csv) CsvFile.Write(csv, writer => DecisionTables.Write(answer, writer));
        return PageFolder.Complete(page, PlanReply.Of(answer, settings.Csv), folder => AnswerPage.Write(profile, answer, folder));
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

        [CommandOption("--uncooled")]
        [Description("The camera has no cooler: the plan says when in the night to shoot each master.")]
        public bool Uncooled { get; init; }

        [CommandOption("--csv <FILE>")]
        [Description("Write the list as a table here too.")]
        public string? Csv { get; init; }

        public PlanQuestion Question(CameraProfile profile, IReadOnlyList<FrameSet> sets) => new()
        {
            Lights = sets.Count > 0 ? [.. sets.Select(FromDisk)] : Typed(profile),
            Sky = SkyRate,
            Limits = Limits,
            Cooled = !Uncooled,
        };

        private PlannedLights FromDisk(FrameSet set) => new()
        {
            ExposureSeconds = set.ExposureSeconds ?? throw CommandFailure.UnreadableInput($"{set.Frames[0].Name}: the exposure of these lights is not known; give it in a capture table (--table)."),
            StartCelsius = set.Frames[0].TemperatureCelsius ?? Unknown(set),
            EndCelsius = set.Frames[^1].TemperatureCelsius,
            Lights = set.Frames.Count,
            DitherPositions = Dithers ?? 1,
            RejectsOutliers = Rejects,
            Settings = set.Settings,
        };

        private PlannedLights[] Typed(CameraProfile profile)
        {
            if (Exposures.Length == 0 && LightCount is null && Temperature is null && Until is null && Dithers is null && !Rejects && WantedMode is null) return [];
            PlannedLights usual = PlannedLights.Usual(Temperature ?? ReferenceOf(profile));
            IEnumerable<double> exposures = Exposures.Length > 0 ? Exposures.Select(Number.Parse) : [usual.ExposureSeconds];
            return [.. exposures.Select(seconds => usual with
            {
                ExposureSeconds = seconds,
                EndCelsius = Until,
                Lights = LightCount ?? usual.Lights,
                DitherPositions = Dithers ?? usual.DitherPositions,
                RejectsOutliers = Rejects,
                Settings = WantedMode,
            })];
        }

        private double ReferenceOf(CameraProfile profile) => ModeChoice.Find(profile, WantedMode).DarkCurrent?.ReferenceTemperature
            ?? throw CommandFailure.WrongCommandLine("This profile has no reference temperature: give --temperature, the sensor temperature of the lights.");

        private double Unknown(FrameSet set) => Temperature
            ?? throw CommandFailure.UnreadableInput($"{set.Frames[0].Name}: the sensor temperature of these lights is not known; give --temperature, or a capture table (--table).");
    }
}
