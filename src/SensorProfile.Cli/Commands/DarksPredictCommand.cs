using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>darks predict</c>: I have no dark that fits.</summary>
internal sealed class DarksPredictCommand : AnswerCommand<DarksPredictCommand.Settings>
{
    protected override string Name => "darks predict";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        string file = string.IsNullOrWhiteSpace(settings.Out)
            ? throw CommandFailure.WrongCommandLine("darks predict needs --out, the file for the computed dark.")
            : settings.Out;
        if (settings.Against.Length == 0 && (settings.Table is not null || settings.NamesSay))
            throw CommandFailure.WrongCommandLine(
                $"{(settings.Table is not null ? "--table" : "--names-say")} is for fresh darks: add --against "
                    + "PATH, or leave it out."
            );
        DarkPredictionQuestion question = settings.Question;
        string stored = Path.GetFullPath(ProfileReading.FileOf(settings.Profile)),
            maps = Path.Combine(Path.GetDirectoryName(stored)!, "maps");
        CheckPlace(file, stored, maps, settings);
        OutputFile.Check(file, settings.Overwrite, "--out", settings.Table);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        ModeProfile mode = ModeChoice.Find(profile, settings.WantedMode);
        question = question with
        {
            MapsFolder = maps,
            Against =
                settings.Against.Length == 0
                    ? null
                    : SetReading.Read(
                        session,
                        settings.Against,
                        FrameKind.Dark,
                        settings.Table,
                        settings.NamesSay,
                        out _
                    ),
        };
        DarkPredictionAnswer answer = DarkPrediction.Compute(profile, mode, question, session.Stop);
        if (answer.Master is { } master)
            OutputFile.Write(file, master.Write);
        return DarkPredictionDocument.Compose(answer, file);
    }

    /// <summary>Refuses an output that would overwrite something that is read.</summary>
    private static void CheckPlace(string file, string profile, string maps, Settings settings)
    {
        string target = PathRelations.Resolved(file);
        foreach (string read in (string[])[profile, maps, .. settings.Against])
            if (PathRelations.IsSameOrInside(target, PathRelations.Resolved(read)))
                throw CommandFailure.WrongCommandLine(
                    $"--out {file} lies in {read}, which is read. Choose a file beside it."
                );
    }

    internal sealed class Settings : ModeSettingsOptions
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("profile.json, or the folder that holds it; its maps must be beside it.")]
        public string Profile { get; init; } = "";

        [CommandOption("--temperature <C>")]
        [Description("Sensor temperature of the lights, °C.")]
        [TypeConverter(typeof(Number))]
        public double? Temperature { get; init; }

        [CommandOption("--exposure <S>")]
        [Description("Exposure of the lights, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--out <FILE>")]
        [Description(
            "FITS file for the computed dark: the dark in ADU, pedestal included, and its uncertainty as the extension UNCERTAINTY."
        )]
        public string? Out { get; init; }

        [CommandOption("--overwrite")]
        [Description("Replace that file if it exists.")]
        public bool Overwrite { get; init; }

        [CommandOption("--against <PATH>")]
        [Description(
            "A few fresh darks of that temperature and exposure: the computed dark is checked "
                + "against them, and not written when they contradict it."
        )]
        public string[] Against { get; init; } = [];

        [CommandOption("--table <FILE>")]
        [Description("Capture table that corrects the headers of the fresh darks.")]
        public string? Table { get; init; }

        [CommandOption("--names-say")]
        [Description("Where a header does not say what kind a frame is, go by the names of file and folder.")]
        public bool NamesSay { get; init; }

        public DarkPredictionQuestion Question =>
            new()
            {
                TemperatureCelsius = Temperature
                    ?? throw CommandFailure.WrongCommandLine(
                        "darks predict needs --temperature, the sensor temperature of the lights in °C."
                    ),
                ExposureSeconds = Exposure
                    ?? throw CommandFailure.WrongCommandLine(
                        "darks predict needs --exposure, the exposure of one light in seconds."
                    ),
                MapsFolder = "",
            };
    }
}
