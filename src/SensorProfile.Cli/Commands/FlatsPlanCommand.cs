using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Tables;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>flats plan</c>: how many flats, at which level?</summary>
internal sealed class FlatsPlanCommand : AnswerCommand<FlatsPlanCommand.Settings>
{
    protected override string Name => "flats plan";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        settings.RefuseIgnored();
        if (settings.Csv is { } target)
            OutputFile.Check(
                target,
                settings.Overwrite,
                "--csv",
                [ProfileReading.FileOf(settings.Profile), settings.Table, .. settings.LightPaths]
            );
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite, settings.LightPaths);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        FrameSet? lights = settings.LightPaths.Count > 0 ? settings.OnDisk(session) : null;
        ModeProfile mode = ModeChoice.Find(profile, settings.WantedMode ?? lights?.Settings);
        FlatPlanQuestion question = settings.Question(lights, settings.ReadSky(session, profile, lights));
        AssumedTemperature? taken = question.TemperatureCelsius is null ? Assumed(profile, mode, question) : null;
        FlatPlanAnswer answer = FlatPlanAdvice.Find(
            profile,
            mode,
            question with
            {
                TemperatureCelsius = question.TemperatureCelsius ?? taken?.Celsius,
            }
        );
        if (settings.Csv is { } csv)
            CsvFile.Write(csv, writer => DecisionTables.Write(answer, writer));
        AnswerDocument reply = FlatPlanDocument.Compose(
            answer,
            settings.Csv,
            taken is null ? [] : [taken.ToFinding()]
        ) with
        {
            Assumptions =
            [
                .. settings.AssumedLights(question, lights is not null),
                .. StackAssumptions.Of(question, answer.Sky, settings.Loss is not null),
                .. settings.AssumedFlats(question),
                .. taken is null
                    ? Array.Empty<AnswerAssumption>()
                    : [StackAssumptions.Temperature(taken.Celsius, AssumptionSource.Profile)],
            ],
        };
        return PageFolder.Complete(page, reply, folder => AnswerPage.Write(profile, answer, reply, folder));
    }

    // without dark current the profile has no set point either; the answer explains that
    private static AssumedTemperature? Assumed(CameraProfile profile, ModeProfile mode, StackDescription stack)
    {
        try
        {
            return AssumedTemperature.Choose(profile, mode, stack, cooled: true);
        }
        catch (DecisionRefusedException refused) when (refused.Kind == RefusalKind.CannotTell)
        {
            return null;
        }
    }

    internal sealed class Settings : StackSettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("profile.json, or the folder that holds it.")]
        public string Profile { get; init; } = "";

        [CommandOption("--exposure <S>")]
        [Description("Exposure of one light, s; default 300.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--level <PCT>")]
        [Description("Mean level of your flats, % of the full well; default: the best one.")]
        [TypeConverter(typeof(Number))]
        public double? Level { get; init; }

        [CommandOption("--dark-flats <N>")]
        [Description("Dark flats or bias frames that you subtract from the flats; default: as many as flats.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? DarkFlats { get; init; }

        [CommandOption("--csv <FILE>")]
        [Description("Also write the levels as a table to this file.")]
        public string? Csv { get; init; }

        /// <summary>Refuses options that would be ignored.</summary>
        public void RefuseIgnored()
        {
            RefuseFrameOptions(LightPaths.Count > 0);
            if (ThreeSkies)
                throw CommandFailure.WrongCommandLine(
                    "A plan is for one sky: leave out --three-skies, and give yours with --sky."
                );
            if (LightPaths.Count > 0 && Exposure is not null)
                throw CommandFailure.WrongCommandLine(
                    "With the folder of the lights the frames give their exposure: leave out --exposure; a capture table "
                        + "(--table) corrects the headers."
                );
        }

        /// <summary>The lights on disk as one set; all must have the same exposure and settings.</summary>
        public FrameSet OnDisk(Session session)
        {
            FrameSet[] sets =
            [
                .. SetReading
                    .Read(session, LightPaths, FrameKind.Light, Table, NamesSay, out _)
                    .Select(Completed)
                    .OrderByDescending(s => s.Frames.Count),
            ];
            if (sets.Length == 0)
                throw CommandFailure.UnreadableInput(
                    $"{LightPaths[0]}: there are no light frames here; check the path."
                );
            if (sets.Select(s => (s.ExposureSeconds, s.Settings)).Distinct().Count() > 1)
                throw CommandFailure.WrongCommandLine(
                    $"{LightPaths[0]} holds lights of several exposures or settings: give the folder of one stack."
                );
            return sets[0] with { Frames = [.. sets.SelectMany(s => s.Frames)] };
        }

        /// <summary>The sky as given, or else as measured on the lights; null when neither is available.</summary>
        public SkyRate? ReadSky(Session session, CameraProfile profile, FrameSet? lights) =>
            SkyRate ?? (lights is null ? null : SkyReading.Measure(session, profile, WantedMode, [lights], darks: []));

        public FlatPlanQuestion Question(FrameSet? lights, SkyRate? sky)
        {
            FlatPlanQuestion usual = new();
            return usual with
            {
                ExposureSeconds = lights is null
                    ? Exposure ?? usual.ExposureSeconds
                    : lights.ExposureSeconds
                        ?? throw CommandFailure.UnreadableInput(
                            $"{lights.Frames[0].Name}: the exposure of these lights is not known; give it in a capture "
                                + "table (--table)."
                        ),
                Lights = lights?.Frames.Count ?? LightCount ?? usual.Lights,
                DitherPositions = Dithers,
                Rejection = Rejection,
                Sky = sky,
                Limits = Limits,
                TemperatureCelsius = Temperature,
                Level = Percent.ShareOf(Level),
                UnlitFrames = DarkFlats,
            };
        }

        /// <summary>Exposure and number of the lights.</summary>
        public IEnumerable<AnswerAssumption> AssumedLights(FlatPlanQuestion question, bool onDisk) =>
            [
                AnswerAssumption.Option(
                    "exposure",
                    question.ExposureSeconds,
                    onDisk || Exposure is not null,
                    $"lights of {QuantityText.Number(question.ExposureSeconds)} s"
                ),
                AnswerAssumption.Option(
                    "lights",
                    question.Lights,
                    onDisk || LightCount is not null,
                    $"{QuantityText.Count(question.Lights)} lights"
                ),
            ];

        /// <summary>What is subtracted from the flats, and how their light falls off.</summary>
        public IEnumerable<AnswerAssumption> AssumedFlats(FlatPlanQuestion question) =>
            [
                AnswerAssumption.Option(
                    "darkFlats",
                    question.UnlitFrames,
                    DarkFlats is not null,
                    question.UnlitFrames is int n
                        ? $"{QuantityText.Count(n)} dark flats or bias frames"
                        : "as many dark flats or bias frames as flats"
                ),
                AnswerAssumption.Option(
                    "flatFallOff",
                    question.Limits.FlatFallOff,
                    given: false,
                    $"flats fall off by {QuantityText.Number(100 * question.Limits.FlatFallOff)} % to the corners"
                ),
            ];
    }
}
