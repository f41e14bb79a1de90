using System.ComponentModel;
using System.Runtime.CompilerServices;
using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Output;
using SensorProfile.Drift.Archive;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Answers;
using SensorProfile.Screening;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>characterise</c>: what is my camera like?</summary>
internal sealed class CharacteriseCommand : AnswerCommand<CharacteriseCommand.Settings>
{
    protected override string Name => "characterise";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        string folder = string.IsNullOrWhiteSpace(settings.Out)
            ? throw CommandFailure.WrongCommandLine("characterise needs --out, the folder for the results.")
            : settings.Out;
        if (settings.Timings is { } file)
            OutputFile.Check(file, settings.Overwrite, "--timings", settings.Table, settings.Thresholds);
        StageClock? stages = settings.Timings is null ? null : new StageClock();
        using OutputFolder output = OutputFolder.Begin(folder, settings.Overwrite, settings.Paths);
        CaptureTable? table = settings.Table is { } captures ? CaptureTable.Read(captures) : null;
        (DefectThresholds Thresholds, double? ReferenceTemperature)? limits = settings.Thresholds is { } given
            ? ThresholdFile.Read(given)
            : null;
        stages?.Begin("reading headers");
        Inventory inventory = FrameReading.Read(session, settings.Paths, table, settings.NamesSay);
        CameraProfile profile = Measured(session, settings, limits, inventory, output, stages);
        stages?.Begin("report");
        // The maps are no longer needed; without this their memory would stay in use while the report is made.
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        output.Write(work => ResultsFolder.WriteReport(work, profile, session.Stop));
        output.Complete();
        if (stages is not null)
            StageTable.Write(settings.Timings!, stages);
        AnswerDocument reply = ProfileDocument.Compose(Name, profile, folder);
        return settings.Archive is { } archive
            ? ArchiveKeeping.Keep(
                archive,
                [ProfileOnDisk.Read(folder)],
                reply,
                $"Year over year: sensorprofile drift {Quoted.Of(archive)} --out drift"
            )
            : reply;
    }

    /// <summary>Measures and writes; the maps, most of the memory, become garbage when it returns.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static CameraProfile Measured(
        Session session,
        Settings settings,
        (DefectThresholds Thresholds, double? ReferenceTemperature)? limits,
        Inventory inventory,
        OutputFolder output,
        StageClock? stages
    )
    {
        double? reference = settings.Reference ?? limits?.ReferenceTemperature ?? Earlier(settings.Archive, inventory);
        CharacterisationResult result = Characterising.Run(
            session,
            inventory,
            reference,
            settings.Quick,
            Source(settings.Temperatures),
            limits?.Thresholds,
            stages
        );
        stages?.Begin("maps and tables");
        FrameReading.Name(session.Side, [.. result.Profile.Frames.Rejected.Except(inventory.Rejected)]);
        output.Write(work => ResultsFolder.WriteMeasured(work, result, session.Stop));
        return result.Profile;
    }

    private static TemperatureSource Source(string name) =>
        name switch
        {
            "headers" => TemperatureSource.Headers,
            "hot-pixels" => TemperatureSource.HotPixels,
            _ => throw CommandFailure.WrongCommandLine($"--temperatures {Quoted.Of(name)}: say headers or hot-pixels."),
        };

    /// <summary>The reference temperature of the sessions already kept, so that this one can be compared with them.</summary>
    private static double? Earlier(string? archive, Inventory inventory) =>
        string.IsNullOrWhiteSpace(archive)
            ? null
            : ProfileArchive.ReferenceTemperature(
                archive,
                inventory.Sets.SelectMany(s => s.Frames).Select(f => f.Camera).FirstOrDefault(name => name is not null)
            );

    internal sealed class Settings : FrameSettings
    {
        [CommandOption("--out <DIR>")]
        [Description("Folder for the results; created by the command, refused when it exists.")]
        public string? Out { get; init; }

        [CommandOption("--table <FILE>")]
        [Description("Capture table (CSV) that corrects what the headers say; survey writes one.")]
        public string? Table { get; init; }

        [CommandOption("--reference <C>")]
        [Description("Temperature that rates refer to, °C; default: the middle of the measured range.")]
        [TypeConverter(typeof(Number))]
        public double? Reference { get; init; }

        [CommandOption("--archive <DIR>")]
        [Description(
            "Also keep the profile and small maps in this folder, for 'drift' in years to come; rates then "
                + "refer to the temperature of the sessions already kept."
        )]
        public string? Archive { get; init; }

        [CommandOption("--temperatures <SOURCE>")]
        [WordsOf<TemperatureSource>]
        [Description(
            "Where the darks' temperatures come from: headers, checked against the hot pixels; or "
                + "hot-pixels, for a probe that is stuck, late or off in some sets."
        )]
        [DefaultValue("headers")]
        public string Temperatures { get; init; } = "headers";

        [CommandOption("--thresholds <FILE>")]
        [Description(
            "What counts as hot, warm, cold, dead or flickering: a JSON file such as { "
                + "\"hotRate\": 0.5 }, or an earlier profile.json, to count with its thresholds and at its "
                + "temperature again."
        )]
        public string? Thresholds { get; init; }

        [CommandOption("--timings <FILE>")]
        [Description(
            "Write what each stage cost to this file (CSV): time, processor time, bytes read, passes over the frames, memory "
                + "allocated."
        )]
        public string? Timings { get; init; }

        [CommandOption("--quick")]
        [Description("Skip the temperature law of every single pixel.")]
        public bool Quick { get; init; }
    }
}
