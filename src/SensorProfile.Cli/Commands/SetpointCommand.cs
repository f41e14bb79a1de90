using System.ComponentModel;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Reporting;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Nights;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>setpoint</c>: how cold should I run it?</summary>
internal sealed class SetpointCommand : AnswerCommand<SetpointCommand.Settings>
{
    protected override string Name => "setpoint";

    protected override AnswerDocument Answer(Session session, Settings settings)
    {
        settings.RefuseIgnored();
        SetpointQuestion question = settings.Question;
        settings.CheckSky();
        using PageFolder? page = PageFolder.Begin(settings.Page, settings.Overwrite);
        CameraProfile profile = ProfileReading.Read(settings.Profile);
        ModeProfile mode = ModeChoice.Find(profile, settings.WantedMode);
        SetpointAnswer answer = SetpointAdvice.Find(
            profile,
            mode,
            question with
            {
                Sky = settings.ReadSky(session, profile, mode.Settings),
            }
        );
        return PageFolder.Complete(page, SetpointDocument.Compose(answer, settings.Assumptions(answer)), folder =>
            AnswerPage.Write(profile, answer, folder)
        );
    }

    internal sealed class Settings : OwnSkySettings
    {
        [CommandOption("--exposure <S>")]
        [Description("Exposure of one light, s.")]
        [TypeConverter(typeof(Number))]
        public double? Exposure { get; init; }

        [CommandOption("--ambient <C>")]
        [Description("Temperature of the night air, °C; may be given several times, also as July=22.")]
        public string[] Ambient { get; init; } = [];

        [CommandOption("--nights <FILE>")]
        [Description("A table of nights, such as a year of them, one per line: date, comma, °C of the air.")]
        public string? Nights { get; init; }

        [CommandOption("--max-delta <C>")]
        [Description("How far below the air the cooler reaches, °C.")]
        [TypeConverter(typeof(Number))]
        public double? MaximumDifference { get; init; }

        [CommandOption("--margin <C>")]
        [Description("How much of --max-delta to keep in reserve, °C; default 3.")]
        [TypeConverter(typeof(Number))]
        public double? Margin { get; init; }

        [CommandOption("--loss <PCT>")]
        [Description("Rise in noise from dark current that you accept, %; default 5.")]
        [TypeConverter(typeof(Number))]
        public double? Loss { get; init; }

        [CommandOption("--uncooled")]
        [Description("The camera has no cooler: its sensor follows the air.")]
        public bool Uncooled { get; init; }

        [CommandOption("--self-heating <C>")]
        [Description("How much warmer than the air an uncooled sensor runs, °C.")]
        [TypeConverter(typeof(Number))]
        public double? SelfHeating { get; init; }

        /// <summary>Refuses options for a cooler with a camera that has none, and the reverse.</summary>
        public void RefuseIgnored()
        {
            if (Uncooled && (MaximumDifference is not null || Margin is not null))
                throw CommandFailure.WrongCommandLine(
                    $"{(MaximumDifference is not null ? "--max-delta" : "--margin")} is for a cooler and "
                        + "--uncooled says there is none: leave one of them out."
                );
            if (!Uncooled && SelfHeating is not null)
                throw CommandFailure.WrongCommandLine(
                    "--self-heating is for a camera without a cooler: add --uncooled, or leave it out."
                );
            if (Margin is not null && MaximumDifference is null)
                throw CommandFailure.WrongCommandLine(
                    "--margin is a part of what the cooler reaches: add --max-delta, or leave it out."
                );
            if (MaximumDifference is not null && Ambient.Length == 0 && Nights is null)
                throw CommandFailure.WrongCommandLine(
                    "--max-delta counts from the temperature of the air: add --ambient or --nights, or leave it out."
                );
        }

        /// <summary>What was given and what was left at its default.</summary>
        public IReadOnlyList<AnswerAssumption> Assumptions(SetpointAnswer answer)
        {
            SetpointQuestion question = Question;
            AnswerAssumption[] cooler = MaximumDifference is double reach
                ?
                [
                    AnswerAssumption.Option(
                        "coolerReach",
                        reach,
                        true,
                        $"cooler reaches {QuantityText.Number(reach)} °C below the air"
                    ),
                    AnswerAssumption.Option(
                        "coolerMargin",
                        question.Margin,
                        Margin is not null,
                        $"{QuantityText.Number(question.Margin)} °C of that in reserve"
                    ),
                ]
                : [];
            AnswerAssumption heat = AnswerAssumption.Option(
                "selfHeating",
                question.SelfHeating,
                SelfHeating is not null,
                $"sensor {QuantityText.Number(question.SelfHeating)} °C above the air"
            );
            return
            [
                .. new[] { answer }.Concat(answer.OtherSkies).Select(a => AnswerAssumption.Sky(a.Sky)),
                AnswerAssumption.Option(
                    "acceptedLoss",
                    100 * question.Loss,
                    Loss is not null,
                    $"accepted rise in noise {QuantityText.Number(100 * question.Loss)} %"
                ),
                AnswerAssumption.Option(
                    "shareOfPixels",
                    100 * question.Share,
                    given: false,
                    $"held by {QuantityText.Number(100 * question.Share)} % of the pixels"
                ),
                .. cooler,
                .. Uncooled ? [heat] : Array.Empty<AnswerAssumption>(),
            ];
        }

        public SetpointQuestion Question
        {
            get
            {
                SetpointQuestion usual = new()
                {
                    ExposureSeconds = Exposure
                        ?? throw CommandFailure.WrongCommandLine(
                            "setpoint needs --exposure, the exposure of one light in seconds."
                        ),
                };
                return usual with
                {
                    Ambient =
                    [
                        .. Ambient.Select(AmbientText.Parse),
                        .. Nights is null ? [] : TemperatureTable.Read(Nights),
                    ],
                    MaximumDifference = MaximumDifference,
                    Margin = Margin ?? usual.Margin,
                    Loss = Percent.ShareOf(Loss) ?? usual.Loss,
                    Cooled = !Uncooled,
                    SelfHeating = SelfHeating ?? usual.SelfHeating,
                };
            }
        }
    }
}
