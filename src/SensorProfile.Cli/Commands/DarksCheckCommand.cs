using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Output;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>darks check</c>: is my dark library still good?</summary>
internal sealed class DarksCheckCommand : AnswerCommand<DarksCheckCommand.Settings>
{
    protected override string Name => "darks check";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        if (settings.Against.Length == 0)
            throw CommandFailure.WrongCommandLine(
                "darks check needs --against, the folder of a few fresh darks like those of the masters."
            );
        if (settings.Profile is null && (settings.SkyRate is not null || settings.WantedMode is not null))
            throw CommandFailure.WrongCommandLine(
                $"Without a profile {(settings.SkyRate is not null ? "the sky" : "a setting of the camera")} has "
                    + "no effect: add --profile, or leave it out."
            );
        using OutputFolder? output = settings.Out is { } folder
            ? OutputFolder.Begin(folder, settings.Overwrite, [.. settings.Masters, .. settings.Against])
            : null;
        CameraProfile? profile = settings.Profile is { } path ? ProfileReading.Read(path) : null;
        if (!settings.Masters.Any(Path.Exists))
            throw CommandFailure.UnreadableInput(
                $"{settings.Masters[0]}: there is no such file or folder; check the path."
            );
        string[] masters = [.. settings.Masters.SelectMany(MasterFiles)];
        CaptureTable? table = settings.Table is { } file ? CaptureTable.Read(file) : null;
        Inventory fresh = FrameReading.Read(session, settings.Against, table, settings.NamesSay);
        DarkLibraryAnswer answer = DarkLibraryCheck.Run(masters, fresh, profile, settings.Options, session.Stop);
        AnswerDocument reply = DarkLibraryDocument.Compose(answer) with
        {
            Assumptions = StackAssumptions.Of(settings.Options, settings.Options.Sky, settings.Loss is not null),
        };
        if (output is null)
            return reply;
        DateTimeOffset date = fresh.Sets.SelectMany(s => s.Frames).Max(f => f.StartUtc) ?? DateTimeOffset.UnixEpoch;
        output.Write(work => DarkCheckReportWriter.Write(answer, work, date));
        output.Complete();
        return reply with
        {
            Lines = [.. reply.Lines, $"Report: {Path.Combine(settings.Out!, "check.html")} and check.pdf beside it."],
        };
    }

    /// <summary>
    /// A file itself, even if missing (it is then reported by name), or every FITS file in a folder.
    /// </summary>
    private static IEnumerable<string> MasterFiles(string path)
    {
        if (!Directory.Exists(path))
            return [path];
        string[] found = [.. Directory.EnumerateFiles(path).Where(IsFits).Order(StringComparer.Ordinal)];
        return found.Length > 0
            ? found
            : throw CommandFailure.UnreadableInput(
                $"{path}: holds no FITS file (.fits, .fit, .fts, also .gz or .fz). Masters are read in that form only: export "
                    + "them as FITS; the fresh darks may be raw files."
            );
    }

    private static bool IsFits(string file)
    {
        string name = Path.GetFileName(file).ToLowerInvariant();
        if (name.StartsWith('.'))
            return false; // metadata that another system leaves beside a file: "._master.fits"
        if (name.EndsWith(".gz", StringComparison.Ordinal) || name.EndsWith(".fz", StringComparison.Ordinal))
            name = name[..^3];
        return Path.GetExtension(name) is ".fits" or ".fit" or ".fts";
    }

    internal sealed class Settings : GivenSkySettings
    {
        [CommandArgument(0, "<MASTER>")]
        [Description("Master darks (FITS, made by any program), or folders that hold them.")]
        public string[] Masters { get; init; } = [];

        [CommandOption("--against <PATH>")]
        [Description(
            "Fresh darks taken like the masters', ideally 8 of each, and a few bias frames where a master has its bias subtracted."
        )]
        public string[] Against { get; init; } = [];

        [CommandOption("--profile <PROFILE>")]
        [Description("Profile of the camera: its gain turns residuals into electrons, so that the sky can be counted.")]
        public string? Profile { get; init; }

        [CommandOption("--lights <N>")]
        [Description("Lights in the stack that the masters serve; default 40.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Lights { get; init; }

        [CommandOption("--dithers <K>")]
        [Description("Dither positions among the lights; default 1 (no dithering).")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Dithers { get; init; }

        [CommandOption("--rejects")]
        [Description("The stack rejects outliers: the same as --rejection sigma-clip.")]
        public bool Rejects { get; init; }

        [CommandOption("--rejection <NAME>")]
        [WordsOf<Rejection>]
        [Description(RejectionName.Description)]
        public string? RejectionMethod { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise in noise that you accept, %; default 5.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--smooth <PX>")]
        [Description(SmoothScale.Description)]
        [TypeConverter(typeof(Number))]
        public double? Smooth { get; init; }

        [CommandOption("--out <DIR>")]
        [Description("Folder for a report of the check; created by the command, refused when it exists.")]
        public string? Out { get; init; }

        [CommandOption("--overwrite")]
        [Description("Replace earlier results.")]
        public bool Overwrite { get; init; }

        [CommandOption("--table <FILE>")]
        [Description("Capture table that corrects the headers of the fresh frames.")]
        public string? Table { get; init; }

        [CommandOption("--names-say")]
        [Description("Where a header does not say what kind a frame is, go by the names of file and folder.")]
        public bool NamesSay { get; init; }

        public DarkLibraryOptions Options
        {
            get
            {
                DarkLibraryOptions usual = new();
                return usual with
                {
                    Lights = Lights ?? usual.Lights,
                    DitherPositions = Dithers,
                    Rejection = RejectionName.Parse(RejectionMethod, Rejects),
                    Sky = SkyRate,
                    Limits = usual.Limits with
                    {
                        NoiseLoss = Percent.ShareOf(Loss) ?? usual.Limits.NoiseLoss,
                        SmoothPixels = Smooth,
                    },
                    Mode = WantedMode,
                };
            }
        }
    }
}
