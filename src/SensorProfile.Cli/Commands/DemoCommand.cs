using System.ComponentModel;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Cli.Printing;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Session;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>demo</c>: what does this do?</summary>
internal sealed class DemoCommand : AnswerCommand<DemoCommand.Settings>
{
    private const string UsualFolder = "sensorprofile-demo";
    private const double ExposureSeconds = 300;
    private const int Lights = 40;
    private const double Sky = 0.5;

    protected override string Name => "demo";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        string folder = settings.Out ?? UsualFolder;
        using OutputFolder output = OutputFolder.Begin(folder, settings.Overwrite, []);
        CameraDescription camera = DemoCameras.Tarn9M();
        output.Write(work =>
        {
            File.WriteAllText(Path.Combine(work, "camera.json"), camera.ToJson());
            // an ordinary camera: its DNG frames do not say what kind they are
            CameraDescription uncooled = DemoCameras.Fell24C() with { Files = FrameFiles.Dng };
            File.WriteAllText(Path.Combine(work, "uncooled-camera.json"), uncooled.ToJson());
        });
        SimulatedFrames.Write(session, camera, output, "frames", settings.Seed);
        Inventory inventory = FrameReading.Read(
            session,
            [Path.Combine(output.WorkPath, "frames")],
            null,
            namesSay: false
        );
        CharacterisationResult result = Characterising.Run(session, inventory, referenceCelsius: null, quick: false);
        output.Write(work => ResultsFolder.Write(work, result, session.Stop));
        output.Complete();
        return DemoDocument.Compose(
            result.Profile,
            folder,
            Cold(result.Profile),
            Darks(result.Profile, dithers: 1),
            Darks(result.Profile, dithers: Lights / 2)
        );
    }

    private static AnswerDocument Cold(CameraProfile profile) =>
        Ask("setpoint", () =>
            SetpointDocument.Compose(
                SetpointAdvice.Find(
                    profile,
                    ModeChoice.Find(profile, null),
                    new SetpointQuestion { ExposureSeconds = ExposureSeconds, Sky = SkyRate.Given(Sky) }
                )
            )
        );

    /// <summary>The answer of <c>darks match</c>, at the set point that follows from the profile.</summary>
    private static AnswerDocument Darks(CameraProfile profile, int dithers) => Ask("darks match", () =>
        {
            ModeProfile mode = ModeChoice.Find(profile, null);
            var question = new ToleranceQuestion
            {
                ExposureSeconds = ExposureSeconds,
                Lights = Lights,
                Sky = SkyRate.Given(Sky),
                DitherPositions = dithers,
                Rejection = dithers > 1 ? Rejection.SigmaClip : Rejection.None,
            };
            double celsius = AssumedTemperature.Choose(profile, mode, question, cooled: true).Celsius;
            return ToleranceDocument.Compose(
                DarkTolerance.Find(profile, mode, question with { TemperatureCelsius = celsius })
            );
        });

    private static AnswerDocument Ask(string command, Func<AnswerDocument> question)
    {
        try
        {
            return question();
        }
        catch (DecisionRefusedException refusal)
        {
            return DecisionDocument.CannotTell(command, refusal);
        }
    }

    internal sealed class Settings : OutputSettings
    {
        [CommandOption("--seed <N>")]
        [Description("Seed of the simulated night: the same seed gives the same numbers.")]
        [TypeConverter(typeof(WholeNumber<ulong>))]
        public ulong Seed { get; init; } = 1;
    }
}
