using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Nights;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>exposure</c>: which gain setting, and how long a light?</summary>
internal sealed class ExposureCommand : AnswerCommand<ExposureCommand.Settings>
{
    protected override string Name => "exposure";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        ExposureQuestion question = settings.Question;
        settings.CheckSky();
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        GainChoiceAnswer answer = ExposureAdvice.Find(
            profile,
            question with
            {
                Sky = settings.ReadSky(session, profile, settings.WantedMode),
            }
        );
        return PageFolder.Complete(page, ExposureDocument.Compose(answer, settings.Assumptions(answer)), folder =>
            AnswerPage.Write(profile, answer, folder)
        );
    }

    internal sealed class Settings : OwnSkySettings
    {
        [CommandOption("--exposure <S>")]
        [Description("Exposure that you have in mind, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--temperature <C>")]
        [Description("Sensor temperature of the lights, °C; default: the profile's reference temperature.")]
        [TypeConverter(typeof(Number))]
        public double? Temperature { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise in noise from read noise that you accept, %; default 5.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--fill <PCT>")]
        [Description("Share of the full well that sky and dark current may fill, %; default 50.")]
        [TypeConverter(typeof(Number))]
        public double? Fill { get; init; }

        /// <summary>What was given and what was left at its default.</summary>
        public IReadOnlyList<AnswerAssumption> Assumptions(GainChoiceAnswer answer) =>
            [
                .. new[] { answer }.Concat(answer.OtherSkies).Select(a => AnswerAssumption.Sky(a.Sky)),
                AnswerAssumption.Option(
                    "acceptedLoss",
                    100 * answer.Loss,
                    Loss is not null,
                    $"accepted rise in noise {QuantityText.Number(100 * answer.Loss)} %"
                ),
                AnswerAssumption.Option(
                    "fill",
                    100 * answer.Fill,
                    Fill is not null,
                    $"{QuantityText.Number(100 * answer.Fill)} % of the full well for sky and dark current"
                ),
                Temperature is double celsius
                    ? AnswerAssumption.Option(
                        "temperature",
                        celsius,
                        given: true,
                        $"sensor at {QuantityText.Degrees(celsius)}"
                    )
                    : new AnswerAssumption(
                        "temperature",
                        null,
                        AssumptionSource.Profile,
                        "sensor at the reference temperature"
                    ),
            ];

        public ExposureQuestion Question
        {
            get
            {
                ExposureQuestion usual = new();
                return usual with
                {
                    ExposureSeconds = Exposure,
                    TemperatureCelsius = Temperature,
                    Loss = Percent.ShareOf(Loss) ?? usual.Loss,
                    Fill = Percent.ShareOf(Fill) ?? usual.Fill,
                    Settings = WantedMode,
                };
            }
        }
    }
}
