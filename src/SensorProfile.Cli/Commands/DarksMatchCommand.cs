using System.ComponentModel;
using System.Globalization;
using SensorProfile.Cli.Replies;
using SensorProfile.Decisions;
using SensorProfile.Profiles;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>darks match</c>: how far off may my darks be?</summary>
internal sealed class DarksMatchCommand : AnswerCommand<DarksMatchCommand.Settings>
{
    protected override string Name => "darks match";

    protected override Reply Answer(Session session, Settings settings)
    {
        ToleranceQuestion question = settings.Question;
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        ToleranceAnswer answer = DarkTolerance.Find(profile, ModeChoice.Find(profile, settings.WantedMode), question);
        return ToleranceReply.Of(answer);
    }

    internal sealed class Settings : SkySettings
    {
        [CommandArgument(0, "<PROFILE>")]
        [Description("profile.json, or the folder that holds it.")]
        public string Profile { get; init; } = "";

        [CommandOption("--exposure <S>")]
        [Description("Exposure of one light, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--lights <N>")]
        [Description("Lights in the stack.")]
        public string? Lights { get; init; }

        [CommandOption("--temperature <C>")]
        [Description("Sensor temperature of the lights, °C; the profile's reference temperature unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Temperature { get; init; }

        [CommandOption("--dithers <K>")]
        [Description("Dither positions among the lights; 1 (no dithering) unless said.")]
        public int Dithers { get; init; } = 1;

        [CommandOption("--rejects")]
        [Description("The stack leaves out samples that stand out.")]
        public bool Rejects { get; init; }

        [CommandOption("--scaled")]
        [Description("The darks are scaled to the lights by the law of the typical pixel.")]
        public bool Scaled { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise of the noise that you accept, %; 5 unless said.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        public ToleranceQuestion Question
        {
            get
            {
                LossLimits limits = new();
                return new ToleranceQuestion
                {
                    ExposureSeconds = Exposure ?? throw CommandFailure.WrongCommandLine("darks match needs --exposure, the seconds of one light."),
                    Lights = LightCount,
                    TemperatureCelsius = Temperature,
                    DitherPositions = Dithers,
                    RejectsOutliers = Rejects,
                    Scaled = Scaled,
                    Sky = SkyRate,
                    Limits = limits with { NoiseLoss = Percent.ShareOf(Loss) ?? limits.NoiseLoss },
                };
            }
        }

        private int LightCount => Lights is null
            ? throw CommandFailure.WrongCommandLine("darks match needs --lights, the number of lights in the stack.")
            : int.TryParse(Lights, NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count
            : throw CommandFailure.WrongCommandLine($"--lights {Lights} is not a whole number of lights.");
    }
}
