using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
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
            session.Side.Line($"left out: {refused.File}: {refused.Reason}");
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
        [Description(RejectionName.Description)]
        public string? RejectionMethod { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise of the noise that you accept, likewise, %; 5 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--sky <E>")]
        [Description("Sky background, electrons per pixel and second, likewise; a suburban sky unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Sky { get; init; }

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
                        Sky = Sky is { } rate ? SkyRate.Given(rate) : stack.Sky,
                        Limits = stack.Limits with { NoiseLoss = Percent.ShareOf(Loss) ?? stack.Limits.NoiseLoss },
                    },
                };
            }
        }
    }
}
