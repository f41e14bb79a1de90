using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Frames;
using SensorProfile.Reporting.Answers;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Session;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>simulate</c>: what if?</summary>
internal sealed class SimulateCommand : AnswerCommand<SimulateCommand.Settings>
{
    private const string Written = "written";

    public static AnswerShape Shape { get; } = new("simulate", [Written], typeof(SimulateFields));

    protected override string Name => Shape.Command;

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        if (!File.Exists(settings.Camera))
            throw CommandFailure.UnreadableInput($"{settings.Camera}: there is no camera description here.");
        CameraDescription camera = CameraDescription.Read(settings.Camera);
        camera.Validate(settings.Camera);
        using OutputFolder output = OutputFolder.Begin(settings.RequiredOut(Name), settings.Overwrite, []);
        IReadOnlyList<string> frames = SimulatedFrames.Write(session, camera, output, "", settings.Seed);
        output.Complete();
        return new AnswerDocument
        {
            Command = Name,
            Sentence =
                $"{Counted.Nouns(frames.Count, "frame")} of {camera.Name} are in {settings.Out}; truth.json "
                + "beside them holds the true values.",
            Verdict = Written,
            Lines =
            [
                $"Measure them: sensorprofile characterise {Quoted.Of(settings.Out!)} "
                    + (camera.Files != FrameFiles.Fits ? "--names-say " : "")
                    + "--out results",
            ],
            Fields = new SimulateFields(settings.Out!, settings.Seed, frames),
        };
    }

    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "<CAMERA>")]
        [Description("Camera description (JSON), such as the camera.json that the demo writes.")]
        public string Camera { get; init; } = "";

        [CommandOption("--seed <N>")]
        [Description("Seed of the night: the same seed gives the same bytes.")]
        [TypeConverter(typeof(WholeNumber<ulong>))]
        public ulong Seed { get; init; } = 1;
    }
}

/// <summary>Fields that only <c>simulate</c> adds to the JSON document.</summary>
internal sealed record SimulateFields(string Folder, ulong Seed, IReadOnlyList<string> Frames);
