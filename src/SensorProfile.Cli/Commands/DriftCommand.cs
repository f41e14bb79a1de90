using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Years;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>drift</c>: is my sensor ageing?</summary>
internal sealed class DriftCommand : AnswerCommand<DriftCommand.Settings>
{
    protected override string Name => "drift";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        using OutputFolder? output = settings.Out is { } folder
            ? OutputFolder.Begin(folder, settings.Overwrite, settings.Profiles)
            : null;
        FoundProfiles found = ProfileArchive.Read(settings.Profiles);
        foreach (var refused in found.Refused)
            session.Side.WriteLine($"left out: {refused.File}: {refused.Reason}");
        if (found.Profiles.Count == 0)
            throw CommandFailure.UnreadableInput(
                found.Refused is [var only]
                    ? $"{only.File}: {only.Reason}"
                    : $"nothing readable in {string.Join(", ", settings.Profiles)}."
            );
        DriftAnswer answer = DriftComparison.Run(found.Profiles, settings.Options, found.Refused);
        session.Stop.ThrowIfCancellationRequested();
        AnswerDocument reply = DriftDocument.Compose(answer);
        if (settings.Archive is { } archive)
            reply = ArchiveKeeping.Keep(
                archive,
                found.Profiles,
                reply,
                $"Next year: sensorprofile drift {Quoted.Of(archive)} results"
            );
        if (output is null)
            return reply;
        reply = reply with
        {
            Lines =
            [
                .. reply.Lines,
                $"Report: {Path.Combine(settings.Out!, "drift.html")} and drift.pdf beside it; the numbers are in "
                    + "drift.json and tables.",
            ],
        };
        output.Write(work => Write(work, answer, reply));
        output.Complete();
        return reply;
    }

    private static void Write(string folder, DriftAnswer answer, AnswerDocument reply)
    {
        File.WriteAllText(Path.Combine(folder, "drift.json"), AnswerJson.Of(reply));
        DriftReportWriter.Write(answer, folder);
    }

    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("Profiles of two sessions or more, the folders that hold them, or an archive of many.")]
        public string[] Profiles { get; init; } = [];

        [CommandOption("--archive <DIR>")]
        [Description(
            "Keep the profiles and small maps of their pixels in this folder, for years to come; nothing in it is ever replaced."
        )]
        public string? Archive { get; init; }

        [CommandOption("--reference <C>")]
        [Description("Temperature at which dark currents are compared, °C; default: one that all sessions measured.")]
        [TypeConverter(typeof(Number))]
        public double? Reference { get; init; }

        [CommandOption("--exposure <S>")]
        [Description("Exposure of your lights, s, for the date when the present darks no longer do; default 300.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--lights <N>")]
        [Description("Lights in your stack, for that date; default 40.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Lights { get; init; }

        [CommandOption("--dithers <K>")]
        [Description("Dither positions among the lights, for that date; default 1 (no dithering).")]
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
        [Description("Rise in noise that you accept, for that date, %; default 5.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--sky <E>")]
        [Description("Sky background, electrons per pixel and second; default: a suburban sky, broad band.")]
        [TypeConverter(typeof(Number))]
        public double? Sky { get; init; }

        [CommandOption("--sky-brightness <MAG>")]
        [Description("Estimate the sky from its brightness, mag/arcsec²; needs --focal-ratio and --pixel-size.")]
        [TypeConverter(typeof(Number))]
        public double? Brightness { get; init; }

        [CommandOption("--focal-ratio <N>")]
        [Description("Focal length over aperture, for the sky estimate.")]
        [TypeConverter(typeof(Number))]
        public double? FocalRatio { get; init; }

        [CommandOption("--pixel-size <UM>")]
        [Description("Pixel size in µm, for the sky estimate.")]
        [TypeConverter(typeof(Number))]
        public double? PixelSize { get; init; }

        [CommandOption("--bandwidth <NM>")]
        [Description("Width of the filter's pass band in nm, for the sky estimate; default 300.")]
        [TypeConverter(typeof(Number))]
        public double? Bandwidth { get; init; }

        [CommandOption("--wavelength <NM>")]
        [Description("Centre of the pass band in nm, for the sky estimate; default 550.")]
        [TypeConverter(typeof(Number))]
        public double? Wavelength { get; init; }

        [CommandOption("--efficiency <SHARE>")]
        [Description("Electrons per photon at the aperture, 0 to 1, for the sky estimate; default 0.5.")]
        [TypeConverter(typeof(Number))]
        public double? Efficiency { get; init; }

        private SkyRate? GivenSky =>
            new GivenSky(Sky, Brightness, FocalRatio, PixelSize, Bandwidth, Wavelength, Efficiency).Rate;

        [CommandOption("--filter <NAME>")]
        [Description("A filter of your setup, for the sky estimate; default: its first one.")]
        public string? Filter { get; init; }

        [CommandOption("--setup <FILE>")]
        [Description(
            "Your setup, which stands in for options left out; default: beside the profile, or in your configuration folder."
        )]
        public string? Setup { get; init; }

        [CommandOption("--no-setup")]
        [Description("Ignore any setup.")]
        public bool NoSetup { get; init; }

        public DriftOptions Options
        {
            get
            {
                DriftOptions usual = new();
                ToleranceQuestion stack = usual.Stack!;
                return usual with
                {
                    ReferenceTemperature = Reference,
                    Stack = stack with
                    {
                        ExposureSeconds = Exposure ?? stack.ExposureSeconds,
                        Lights = Lights ?? stack.Lights,
                        DitherPositions = Dithers,
                        Rejection = RejectionName.Parse(RejectionMethod, Rejects),
                        Sky = GivenSky ?? stack.Sky,
                        Limits = stack.Limits with { NoiseLoss = Percent.ShareOf(Loss) ?? stack.Limits.NoiseLoss },
                    },
                };
            }
        }
    }
}
