using System.ComponentModel;
using SensorProfile.Cli.Output;
using SensorProfile.Cli.Replies;
using SensorProfile.Decisions;
using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>exposure</c>: which gain setting, and how long a light?</summary>
internal sealed class ExposureCommand : AnswerCommand<ExposureCommand.Settings>
{
    protected override string Name => "exposure";

    protected override Reply Answer(Session session, Settings settings)
    {
        ExposureQuestion question = settings.Question;
        if (settings.Lights.Length > 0 && question.Sky is not null) throw CommandFailure.WrongCommandLine("Give the sky as a number or with --lights, not both.");
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        if (settings.Lights.Length > 0) question = question with { Sky = Sky(session, settings, profile) };
        GainChoiceAnswer answer = ExposureAdvice.Find(profile, question);
        return PageFolder.Complete(page, ExposureReply.Of(answer), folder => AnswerPage.Write(profile, answer, folder));
    }

    private static SkyRate Sky(Session session, Settings settings, CameraProfile profile)
    {
        IReadOnlyList<FrameSet> lights = SetReading.Read(session, settings.Lights, FrameKind.Light, null, namesSay: false, out _);
        return SkyReading.Measure(session, profile, ModeChoice.Find(profile, settings.WantedMode ?? (lights.Count > 0 ? lights[0].Settings : null)), lights, []);
    }

    internal sealed class Settings : SkySettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("profile.json, or the folder that holds it.")]
        public string Profile { get; init; } = "";

        [CommandOption("--exposure <S>")]
        [Description("Exposure that you have in mind, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--temperature <C>")]
        [Description("Sensor temperature of the lights, °C; the profile's reference temperature unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Temperature { get; init; }

        [CommandOption("--lights <PATH>")]
        [Description("Measure the sky on these lights of yours.")]
        public string[] Lights { get; init; } = [];

        [CommandOption("--loss <PCT>")]
        [Description("Rise of the noise by read noise that you accept, %; 5 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--fill <PCT>")]
        [Description("Part of the full well that sky and dark current may fill, %; 50 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Fill { get; init; }

        public ExposureQuestion Question
        {
            get
            {
                ExposureQuestion usual = new();
                return usual with
                {
                    ExposureSeconds = Exposure,
                    Sky = SkyRate,
                    TemperatureCelsius = Temperature,
                    Loss = Percent.ShareOf(Loss) ?? usual.Loss,
                    Fill = Percent.ShareOf(Fill) ?? usual.Fill,
                    Settings = WantedMode,
                };
            }
        }
    }
}
