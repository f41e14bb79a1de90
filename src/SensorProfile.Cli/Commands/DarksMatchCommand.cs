using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>darks match</c>: how far off may my darks be; and with paths, do these darks fit those lights?</summary>
internal sealed class DarksMatchCommand : AnswerCommand<DarksMatchCommand.Settings>
{
    protected override string Name => "darks match";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        settings.RefuseIgnored();
        return settings.Darks.Length > 0 ? OnDisk(session, settings) : Tolerance(settings);
    }

    private static AnswerDocument Tolerance(Settings settings)
    {
        if (settings.LightPaths.Count > 0)
            throw settings.FolderAlone();
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        ToleranceQuestion question = settings.Tolerance;
        CameraProfile profile = ProfileReading.Read(
            settings.ProfilePath
                ?? throw CommandFailure.WrongCommandLine(
                    "darks match needs a profile, or --lights PATH with --darks PATH."
                )
        );
        ModeProfile mode = ModeChoice.Find(profile, settings.WantedMode);
        AssumedTemperature? taken = question.TemperatureCelsius is null
            ? AssumedTemperature.Choose(profile, mode, question, cooled: true)
            : null;
        ToleranceAnswer answer = DarkTolerance.FindBoth(
            profile,
            mode,
            question with
            {
                TemperatureCelsius = question.TemperatureCelsius ?? taken!.Celsius,
            }
        );
        Finding[] found = taken is null ? [] : [taken.ToFinding()];
        AnswerDocument reply = ToleranceDocument.Compose(answer, found) with
        {
            Assumptions =
            [
                .. StackAssumptions.Of(settings.Stack, answer.Sky, settings.Loss is not null),
                StackAssumptions.Temperature(
                    answer.Stack.TemperatureCelsius,
                    taken is null ? AssumptionSource.Option : AssumptionSource.Profile
                ),
            ],
        };
        return PageFolder.Complete(page, reply, folder => AnswerPage.Write(profile, answer, reply, folder));
    }

    private static AnswerDocument OnDisk(Session session, Settings settings)
    {
        if (settings.LightPaths.Count == 0)
            throw CommandFailure.WrongCommandLine("--darks needs --lights PATH, the folder of the lights.");
        using PageFolder? page = PageFolder.Begin(
            settings.Page,
            settings.Overwrite,
            [.. settings.LightPaths, .. settings.Darks]
        );
        CameraProfile? profile = settings.ProfilePath is { } path ? ProfileReading.Read(path) : null;
        IReadOnlyList<FrameSet> lights =
        [
            .. SetReading
                .Read(
                    session,
                    settings.LightPaths,
                    FrameKind.Light,
                    settings.Table,
                    settings.NamesSay,
                    out IReadOnlyList<Finding> lightFindings
                )
                .Select(settings.Completed),
        ];
        IReadOnlyList<FrameSet> darks =
        [
            .. SetReading
                .Read(
                    session,
                    settings.Darks,
                    FrameKind.Dark,
                    settings.Table,
                    settings.NamesSay,
                    out IReadOnlyList<Finding> darkFindings
                )
                .Select(settings.Completed),
        ];
        (SkyRate? sky, Finding[] skyFindings) = profile is null
            ? (settings.SkyRate, [])
            : SkyReading.OfLights(session, settings, profile, lights, darks);
        MatchAnswer answer = DarkMatching.Find(profile, settings.Matching(lights, darks, sky));
        Finding[] ofFrames =
        [
            .. skyFindings,
            .. SetPoints.StillTrue([.. lightFindings, .. darkFindings], SetPoints.Join([.. lights, .. darks])),
        ];
        DateTimeOffset date = lights.SelectMany(s => s.Frames).Max(f => f.StartUtc) ?? DateTimeOffset.UnixEpoch;
        AnswerDocument reply = MatchDocument.Compose(answer, sky, ofFrames);
        if (profile is not null)
            reply = reply with { Assumptions = StackAssumptions.Of(settings.Stack, sky, settings.Loss is not null) };
        return PageFolder.Complete(page, reply, folder => AnswerPage.Write(answer, sky, reply, date, folder));
    }

    internal sealed class Settings : StackSettings
    {
        [CommandArgument(0, "[PROFILE]")]
        [Description("profile.json, or the folder that holds it.")]
        public string? Profile { get; init; }

        [CommandOption("--profile <PROFILE>")]
        [Description("The camera's profile, when lights and darks are given as folders.")]
        public string? ProfileOption { get; init; }

        [CommandOption("--darks <PATH>")]
        [Description("Darks on disk, to judge against the lights on disk.")]
        public string[] Darks { get; init; } = [];

        [CommandOption("--exposure <S>")]
        [Description("Exposure of one light, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--scaled")]
        [Description("Your program scales the darks to the lights by the law of the typical pixel.")]
        public bool Scaled { get; init; }

        [CommandOption("--bias-frames <N>")]
        [Description("Frames in your master bias: darks on disk are then judged scaled as well.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? BiasFrames { get; init; }

        public string? ProfilePath => Profile ?? ProfileOption;

        /// <summary>Each of the two questions has its own options; those that would be ignored are refused.</summary>
        public void RefuseIgnored()
        {
            if (Profile is not null && ProfileOption is not null)
                throw CommandFailure.WrongCommandLine("Give the profile once, as the first word or with --profile.");
            RefuseFrameOptions(Darks.Length > 0);
            if (Darks.Length == 0 && BiasFrames is not null)
                throw CommandFailure.WrongCommandLine(
                    "--bias-frames is for darks on disk: add --darks PATH, or ask with --scaled alone."
                );
            if (Darks.Length == 0)
                return;
            if (ThreeSkies)
                throw CommandFailure.WrongCommandLine(
                    "--three-skies is for a camera alone: darks on disk are judged under one sky."
                );
            if (Exposure is not null || Temperature is not null)
                throw CommandFailure.WrongCommandLine(
                    "With --darks the frames give their exposure and temperature: leave out --exposure and "
                        + "--temperature; a capture table (--table) corrects the headers."
                );
            if (
                ProfilePath is null
                && (
                    SkyRate is not null
                    || Dithers is not null
                    || Rejects
                    || RejectionMethod is not null
                    || Loss is not null
                    || Smooth is not null
                    || BiasFrames is not null
                )
            )
                throw CommandFailure.WrongCommandLine(
                    "Without a profile only settings, exposure and temperature are compared: add --profile, "
                        + "or leave out the sky, --dithers, --rejects, --loss, --smooth and --bias-frames."
                );
            if (Scaled)
                throw CommandFailure.WrongCommandLine(
                    "With --darks give --bias-frames instead of --scaled: the darks are then judged both ways."
                );
        }

        public CommandFailure FolderAlone() =>
            CommandFailure.WrongCommandLine(
                $"'{Lights[0]}' is not a number of lights: give their number, or add --darks PATH, the darks that lights on "
                    + "disk are judged against."
            );

        public ToleranceQuestion Tolerance =>
            new()
            {
                ExposureSeconds = Exposure
                    ?? throw CommandFailure.WrongCommandLine(
                        "darks match needs --exposure, the exposure of one light in seconds."
                    ),
                Lights = LightCount
                    ?? throw CommandFailure.WrongCommandLine(
                        "darks match needs --lights, the number of lights in the stack (or their folder, together with --darks)."
                    ),
                TemperatureCelsius = Temperature,
                DitherPositions = Dithers,
                Rejection = Rejection,
                Scaled = Scaled,
                Sky = AskedSky,
                Limits = Limits,
            };

        public MatchQuestion Matching(IReadOnlyList<FrameSet> lights, IReadOnlyList<FrameSet> darks, SkyRate? sky) =>
            new()
            {
                Lights = lights,
                Darks = darks,
                Stack = Stack with { Sky = sky },
                BiasFrames = BiasFrames ?? 0,
            };
    }
}
