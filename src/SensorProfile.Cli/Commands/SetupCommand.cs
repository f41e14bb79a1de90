using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Defaults;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Printing;
using SensorProfile.NoiseModel;
using SensorProfile.Reporting.Answers;
using SensorProfile.Setup;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>setup</c>: remember my telescope, sky and habits.</summary>
internal sealed class SetupCommand : AnswerCommand<SetupCommand.Settings>
{
    protected override string Name => "setup";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        string file = settings.Place;
        ObservingSetup? before = File.Exists(file) ? SetupFile.Read(file) : null;
        ObservingSetup after = settings.Change(before ?? new ObservingSetup());
        bool asked =
            settings.Ask || (after == (before ?? new ObservingSetup()) && session.Person is not null && !settings.Json);
        if (asked)
            after = new SetupQuestions(session.Person ?? Console.In, session.Side).Ask(after);
        if (after == (before ?? new ObservingSetup()))
            return SetupDocument.Shown(file, before);
        Write(file, after);
        return SetupDocument.Written(file, SetupFile.Read(file));
    }

    private static void Write(string file, ObservingSetup setup)
    {
        ObservingSetup relative = SetupPaths.From(setup, Path.GetDirectoryName(Path.GetFullPath(file))!);
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
            SetupFile.Write(file, relative);
        }
        catch (SetupFormatException problem)
        {
            throw CommandFailure.WrongCommandLine(problem.Message);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw CommandFailure.UnwritableOutput(
                $"{file}: cannot be written; choose another place with --out ({problem.Message.TrimEnd('.')}).",
                problem
            );
        }
    }

    internal sealed class Settings : AnswerSettings
    {
        [CommandOption("--profile <PROFILE>")]
        [Description("Your camera's profile.json, or the folder that holds it.")]
        public string? Profile { get; init; }

        [CommandOption("--focal-ratio <N>")]
        [Description("Focal length over aperture.")]
        [TypeConverter(typeof(Number))]
        public double? FocalRatio { get; init; }

        [CommandOption("--efficiency <SHARE>")]
        [Description("Electrons per photon at the aperture, 0 to 1.")]
        [TypeConverter(typeof(Number))]
        public double? Efficiency { get; init; }

        [CommandOption("--pixel-size <UM>")]
        [Description("Pixel size in µm.")]
        [TypeConverter(typeof(Number))]
        public double? PixelSize { get; init; }

        [CommandOption("--sky-brightness <MAG>")]
        [Description("Your usual sky, mag/arcsec².")]
        [TypeConverter(typeof(Number))]
        public double? Brightness { get; init; }

        [CommandOption("--sky <E>")]
        [Description("Your usual sky, electrons per pixel and second.")]
        [TypeConverter(typeof(Number))]
        public double? Sky { get; init; }

        [CommandOption("--sky-lights <PATH>")]
        [Description("Your lights, to measure the sky on.")]
        public string? SkyLights { get; init; }

        [CommandOption("--filter <NAME=NM>")]
        [Description(
            "A filter: its name, the width of its band and its centre in nm, Ha=7@656; may be given several times."
        )]
        public string[] Filters { get; init; } = [];

        [CommandOption("--exposure <S>")]
        [Description("Usual exposure of one light, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--lights <N>")]
        [Description("Lights in your stack.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Lights { get; init; }

        [CommandOption("--dithers <K>")]
        [Description("Dither positions among them; 1 without dithering.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Dithers { get; init; }

        [CommandOption("--rejection <NAME>")]
        [WordsOf<Rejection>]
        [Description("How your stack rejects outliers: none, sigma-clip, winsorised or median.")]
        public string? RejectionMethod { get; init; }

        [CommandOption("--smooth <PX>")]
        [Description(SmoothScale.Description)]
        [TypeConverter(typeof(Number))]
        public double? Smooth { get; init; }

        [CommandOption("--max-delta <C>")]
        [Description("How far below the air your cooler reaches, °C.")]
        [TypeConverter(typeof(Number))]
        public double? MaximumDifference { get; init; }

        [CommandOption("--nights <FILE>")]
        [Description("A table of the year's nights, one per line: date, comma, °C of the air.")]
        public string? Nights { get; init; }

        [CommandOption("--uncooled")]
        [Description("The camera has no cooler.")]
        public bool Uncooled { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise in noise that you accept, %.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--ask")]
        [Description("Ask question by question, even when the answers come through a pipe.")]
        public bool Ask { get; init; }

        [CommandOption("--out <FILE>")]
        [Description(
            "Where to write the setup, a file or the folder of a profile; default: your configuration folder."
        )]
        public string? Out { get; init; }

        public string Place =>
            Out is null
                ? SetupPlace.OfUser
                    ?? throw CommandFailure.WrongCommandLine(
                        "This system has no configuration folder: give a place with --out FILE."
                    )
            : Directory.Exists(Out) ? Path.Combine(Out, SetupFile.Name)
            : Out;

        /// <summary>The setup with the options given now; the rest is unchanged.</summary>
        public ObservingSetup Change(ObservingSetup setup) =>
            setup with
            {
                Telescope =
                    FocalRatio is null && Efficiency is null
                        ? setup.Telescope
                        : new TelescopeSetup
                        {
                            FocalRatio = FocalRatio ?? setup.Telescope?.FocalRatio,
                            Efficiency = Efficiency ?? setup.Telescope?.Efficiency,
                        },
                Camera =
                    Profile is null && PixelSize is null
                        ? setup.Camera
                        : new CameraSetup
                        {
                            Profile = Profile is null ? setup.Camera?.Profile : Path.GetFullPath(Profile),
                            PixelMicrometres = PixelSize ?? setup.Camera?.PixelMicrometres,
                        },
                Sky =
                    Sky is null && Brightness is null && SkyLights is null
                        ? setup.Sky
                        : new SkySetup
                        {
                            Brightness = Brightness,
                            Rate = Sky,
                            Lights = SkyLights is null ? null : Path.GetFullPath(SkyLights),
                        },
                Filters = Filters.Length == 0 ? setup.Filters : [.. Filters.Select(FilterText.Parse)],
                Stack =
                    Exposure is null && Lights is null && Dithers is null && RejectionMethod is null && Smooth is null
                        ? setup.Stack
                        : new StackSetup
                        {
                            Exposure = Exposure ?? setup.Stack?.Exposure,
                            Lights = Lights ?? setup.Stack?.Lights,
                            DitherPositions = Dithers ?? setup.Stack?.DitherPositions,
                            Rejection = RejectionMethod is null
                                ? setup.Stack?.Rejection
                                : RejectionName.Parse(RejectionMethod, rejects: false),
                            Smooth = Smooth ?? setup.Stack?.Smooth,
                        },
                Cooling = Cooled(setup.Cooling),
                AcceptedLoss = Loss ?? setup.AcceptedLoss,
            };

        private CoolingSetup? Cooled(CoolingSetup? before) =>
            MaximumDifference is null && Nights is null && !Uncooled
                ? before
                : new CoolingSetup
                {
                    Reach = MaximumDifference ?? (Uncooled ? null : before?.Reach),
                    Nights = Nights is null ? before?.Nights : Path.GetFullPath(Nights),
                    Uncooled =
                        Uncooled ? true
                        : MaximumDifference is null ? before?.Uncooled
                        : null,
                };
    }
}
