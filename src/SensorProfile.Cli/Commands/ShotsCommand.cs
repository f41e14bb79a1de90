using System.ComponentModel;
using System.Globalization;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.Shots;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Tables;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>shots</c>: which frames do I take to characterise my camera?</summary>
internal sealed class ShotsCommand : AnswerCommand<ShotsCommand.Settings>
{
    protected override string Name => "shots";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        if (settings.Csv is { } target)
            OutputFile.Check(target, settings.Overwrite, "--csv", settings.Have);
        ShotQuestion question = settings.Question;
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        if (settings.Have.Length > 0)
            question = question with { Existing = FrameReading.Read(session, settings.Have, null, settings.NamesSay) };
        ShotListAnswer answer = ShotList.Find(question);
        if (settings.Csv is { } csv)
            CsvFile.Write(csv, writer => DecisionTables.Write(answer, writer));
        return PageFolder.Complete(page, ShotsDocument.Compose(answer, settings.Csv), folder =>
            AnswerPage.Write(answer, session.Clock.GetUtcNow(), folder)
        );
    }

    internal sealed class Settings : AnswerSettings
    {
        [CommandOption("--cooled")]
        [Description("The camera has a cooler (assumed unless --uncooled is given).")]
        public bool Cooled { get; init; }

        [CommandOption("--uncooled")]
        [Description("The camera has no cooler.")]
        public bool Uncooled { get; init; }

        [CommandOption("--minutes <M>")]
        [Description("Time available, minutes; default: the full programme.")]
        [TypeConverter(typeof(Number))]
        public double? Minutes { get; init; }

        [CommandOption("--ambient <C>")]
        [Description("Temperature of the air, °C; default 15.")]
        [TypeConverter(typeof(Number))]
        public double? Ambient { get; init; }

        [CommandOption("--max-delta <C>")]
        [Description("How far below the air the cooler reaches, °C; default 35.")]
        [TypeConverter(typeof(Number))]
        public double? MaximumDifference { get; init; }

        [CommandOption("--longest <S>")]
        [Description("Longest exposure of your lights, s; default 300, or the longest of the darks you have.")]
        [TypeConverter(typeof(Number))]
        public double? Longest { get; init; }

        [CommandOption("--size <WxH>")]
        [Description("Frame size in pixels, for the disk space; default 3000x3000, or that of the frames you have.")]
        public string? Size { get; init; }

        [CommandOption("--have <PATH>")]
        [Description("Frames you already have: the list then says what is worth adding. May be given several times.")]
        public string[] Have { get; init; } = [];

        [CommandOption("--names-say")]
        [Description("Where a header does not say what kind a frame is, go by the names of file and folder.")]
        public bool NamesSay { get; init; }

        [CommandOption("--csv <FILE>")]
        [Description("Also write the list as a table to this file.")]
        public string? Csv { get; init; }

        [CommandOption("--page <DIR>")]
        [Description("Also write the list as a page into this folder: PDF to print, HTML and CSV.")]
        public string? Page { get; init; }

        [CommandOption("--overwrite")]
        [Description("Replace what an earlier run wrote there.")]
        public bool Overwrite { get; init; }

        public ShotQuestion Question
        {
            get
            {
                RefuseIgnored();
                ShotQuestion usual = new();
                (int width, int height) = Size is null ? (usual.Width, usual.Height) : FrameSize(Size);
                return usual with
                {
                    Cooled = !Uncooled,
                    Minutes = Minutes,
                    AmbientCelsius = Ambient ?? usual.AmbientCelsius,
                    MaximumDifference = MaximumDifference ?? usual.MaximumDifference,
                    LongestExposureSeconds = Longest,
                    Width = width,
                    Height = height,
                };
            }
        }

        private void RefuseIgnored()
        {
            if (Cooled && Uncooled)
                throw CommandFailure.WrongCommandLine("Give --cooled or --uncooled, not both.");
            if (Uncooled && MaximumDifference is not null)
                throw CommandFailure.WrongCommandLine(
                    "--max-delta is for a cooler and --uncooled says there is none: leave one of them out."
                );
            if (NamesSay && Have.Length == 0)
                throw CommandFailure.WrongCommandLine("--names-say is for frames that exist: add --have PATH.");
            if (Size is not null && Have.Length > 0)
                throw CommandFailure.WrongCommandLine("With --have the frames give their size: leave out --size.");
        }

        private static (int Width, int Height) FrameSize(string text)
        {
            string[] parts = text.Split('x', 'X', '×');
            return
                parts.Length == 2
                && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int width)
                && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int height)
                && width > 0
                && height > 0
                ? (width, height)
                : throw CommandFailure.WrongCommandLine($"'{text}' is not a frame size. Write it like 3000x2000.");
        }
    }
}
