using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Reporting.Answers;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>survey</c>: what have I got, and is it fit for use?</summary>
internal sealed class SurveyCommand : AnswerCommand<SurveyCommand.Settings>
{
    protected override string Name => "survey";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        bool reads = settings.Table is { } given && File.Exists(given) && !settings.Overwrite;
        if (settings.Table is { } place && !reads)
            CheckPlace(place, settings);
        CaptureTable? corrections = reads ? CaptureTable.Read(settings.Table!) : null;
        Inventory inventory = FrameReading.Read(session, settings.Paths, corrections, settings.NamesSay);
        string tableLine = "";
        if (reads)
            tableLine = $"Corrected by the capture table {settings.Table}.";
        else if (settings.Table is { } file)
        {
            OutputFile.Write(file, work => CaptureTable.Write(work, inventory));
            tableLine =
                $"Capture table written: {file}. Correct it by hand, then give it to characterise with --table.";
        }
        return SurveyDocument.Compose(inventory, tableLine);
    }

    private static void CheckPlace(string table, Settings settings)
    {
        OutputFile.Check(table, settings.Overwrite, "--table");
        string target = PathRelations.Resolved(table);
        foreach (string path in settings.Paths)
            if (PathRelations.IsSameOrInside(target, PathRelations.Resolved(path)))
                throw CommandFailure.WrongCommandLine(
                    $"--table {table} lies in {path}, which is read and never written to. Choose a place outside it."
                );
    }

    internal sealed class Settings : FrameSettings
    {
        [CommandOption("--table <FILE>")]
        [Description(
            "Write the capture table (CSV) to this file, to correct the headers by hand; a file that exists is applied instead."
        )]
        public string? Table { get; init; }
    }
}
