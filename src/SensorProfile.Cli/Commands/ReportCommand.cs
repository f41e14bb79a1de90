using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>report</c>: show it again.</summary>
internal sealed class ReportCommand : AnswerCommand<ReportCommand.Settings>
{
    protected override string Name => "report";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        string folder = settings.RequiredOut(Name);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        string home = Path.GetDirectoryName(Path.GetFullPath(ProfileReading.FileOf(settings.Profile)))!;
        using OutputFolder output = OutputFolder.Begin(folder, settings.Overwrite, []);
        ReportMaps pictures = ReportMaps.Read(Path.Combine(home, "maps"), profile);
        output.Write(work =>
            ReportWriter.Write(profile, work, new ReportOptions { Maps = pictures, SmoothPixels = settings.Smooth })
        );
        output.Write(work => StoredMaps.Copy(home, work, session.Stop));
        session.Stop.ThrowIfCancellationRequested();
        output.Complete();
        AnswerDocument reply = ProfileDocument.Compose(Name, profile, folder);
        return reply with { Findings = [.. reply.Findings, .. pictures.Findings] };
    }

    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("profile.json, or the folder that holds it.")]
        public string Profile { get; init; } = "";

        [CommandOption("--smooth <PX>")]
        [Description(SmoothScale.Description)]
        [TypeConverter(typeof(Number))]
        public double? Smooth { get; init; }
    }
}
