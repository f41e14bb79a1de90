using System.ComponentModel;
using System.Globalization;
using SensorProfile.Cli.Describing;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The stack of lights that darks are judged against.</summary>
internal abstract class StackSettings : SkySettings
{
    [CommandOption("--lights <N|PATH>")]
    [Description("Lights in the stack: their number, or the folder that holds them.")]
    public string[] Lights { get; init; } = [];

    [CommandOption("--temperature <C>")]
    [Description("Sensor temperature of the lights, °C; default: the set point that follows from the profile.")]
    [TypeConverter(typeof(Number))]
    public double? Temperature { get; init; }

    [CommandOption("--dithers <K>")]
    [Description("Dither positions among the lights; default 1 (no dithering).")]
    [TypeConverter(typeof(WholeNumber<int>))]
    public int? Dithers { get; init; }

    [CommandOption("--rejects")]
    [Description("The stack rejects outliers: the same as --rejection sigma-clip.")]
    public bool Rejects { get; init; }

    [CommandOption("--rejection <NAME>")]
    [WordsOf<Rejection>]
    [Description(RejectionName.Description)]
    public string? RejectionMethod { get; init; }

    [CommandOption("--loss <PCT>")]
    [Description("Rise in noise that you accept, %; default 5.")]
    [TypeConverter(typeof(Number))]
    public double? Loss { get; init; }

    [CommandOption("--smooth <PX>")]
    [Description(SmoothScale.Description)]
    [TypeConverter(typeof(Number))]
    public double? Smooth { get; init; }

    [CommandOption("--table <FILE>")]
    [Description("Capture table that corrects the headers of the frames.")]
    public string? Table { get; init; }

    [CommandOption("--names-say")]
    [Description("Where a header does not say what kind a frame is, go by the names of file and folder.")]
    public bool NamesSay { get; init; }

    /// <summary>The number of lights; null when folders were given instead, or nothing.</summary>
    /// <exception cref="CommandFailure">The text is not a number of lights.</exception>
    public int? LightCount
    {
        get
        {
            if (
                Lights is not [var only]
                || Path.Exists(only)
                || !double.TryParse(
                    only.Replace('−', '-'),
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture,
                    out double number
                )
            )
                return null;
            return number >= 1 && number <= int.MaxValue && double.IsInteger(number)
                ? (int)number
                : throw CommandFailure.WrongCommandLine(
                    $"The number of lights must be a whole number of 1 or more, not {only}."
                );
        }
    }

    public IReadOnlyList<string> LightPaths => LightCount is null ? Lights : [];

    public Rejection Rejection => RejectionName.Parse(RejectionMethod, Rejects);

    /// <summary>The stack as the user described it.</summary>
    public StackDescription Stack
    {
        get
        {
            StackDescription usual = new();
            return usual with
            {
                Lights = LightCount ?? usual.Lights,
                DitherPositions = Dithers,
                Rejection = Rejection,
                Sky = SkyRate,
                Limits = Limits,
            };
        }
    }

    public LossLimits Limits
    {
        get
        {
            LossLimits usual = new();
            return usual with { NoiseLoss = Percent.ShareOf(Loss) ?? usual.NoiseLoss, SmoothPixels = Smooth };
        }
    }

    /// <summary>Refuses options for frames on disk when there are none, since they would be ignored.</summary>
    public void RefuseFrameOptions(bool frames)
    {
        if (!frames && (Table is not null || NamesSay))
            throw CommandFailure.WrongCommandLine(
                $"{(Table is not null ? "--table" : "--names-say")} is for frames on disk: add their folder, or leave it out."
            );
    }
}
