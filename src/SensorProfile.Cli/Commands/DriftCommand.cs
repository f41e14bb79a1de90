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
        AnswerDocument reply = DriftDocument.Of(answer);
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
            "Keep the profiles and small maps of their pixels here, for the years to come; nothing in it is ever replaced."
        )]
        public string? Archive { get; init; }

        [CommandOption("--reference <C>")]
        [Description(
            "Temperature at which dark currents are compared, °C; one that all sessions measured unless said."
        )]
        [TypeConverter(typeof(Number))]
        public double? Reference { get; init; }

        [CommandOption("--exposure <S>")]
        [Description(
            "Exposure of your lights, s, for the date at which the present darks no longer do; 300 unless said."
        )]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--lights <N>")]
        [Description("Lights in your stack, likewise; 40 unless said.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Lights { get; init; }

        [CommandOption("--dithers <K>")]
        [Description("Dither positions among the lights, likewise; 1 (no dithering) unless said.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Dithers { get; init; }

        [CommandOption("--rejects")]
        [Description("The stack leaves out samples that stand out: the same as --rejection sigma-clip.")]
        public bool Rejects { get; init; }

        [CommandOption("--rejection <NAME>")]
        [WordsOf<Rejection>]
        [Description(RejectionName.Description)]
        public string? RejectionMethod { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise of the noise that you accept, likewise, %; 5 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--sky <E>")]
        [Description("Sky background, electrons per pixel and second; a suburban sky, broad band, unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Sky { get; init; }

        [CommandOption("--sky-brightness <MAG>")]
        [Description("Estimate the sky from its brightness, mag/arcsec²; needs --focal-ratio and --pixel-size.")]
        [TypeConverter(typeof(Number))]
        public double? Brightness { get; init; }

        [CommandOption("--focal-ratio <N>")]
        [Description("Focal length over aperture, for that estimate.")]
        [TypeConverter(typeof(Number))]
        public double? FocalRatio { get; init; }

        [CommandOption("--pixel-size <UM>")]
        [Description("Pixel size in µm, for that estimate.")]
        [TypeConverter(typeof(Number))]
        public double? PixelSize { get; init; }

        [CommandOption("--bandwidth <NM>")]
        [Description("Width of the filter's pass band in nm, for that estimate; 300 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Bandwidth { get; init; }

        [CommandOption("--wavelength <NM>")]
        [Description("Centre of the pass band in nm, for that estimate; 550 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Wavelength { get; init; }

        [CommandOption("--efficiency <SHARE>")]
        [Description("Electrons per photon at the aperture, 0 to 1, for that estimate; 0.5 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Efficiency { get; init; }

        private SkyRate? GivenSky =>
            new GivenSky(Sky, Brightness, FocalRatio, PixelSize, Bandwidth, Wavelength, Efficiency).Rate;

        [CommandOption("--filter <NAME>")]
        [Description("A filter of your setup, for that estimate; its first one unless said.")]
        public string? Filter { get; init; }

        [CommandOption("--setup <FILE>")]
        [Description(
            "Your setup: what it says needs no option; looked for beside the profile and among your own settings."
        )]
        public string? Setup { get; init; }

        [CommandOption("--no-setup")]
        [Description("Read no setup.")]
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
