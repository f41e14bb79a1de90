using System.ComponentModel;
using SensorProfile.Frames;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>Which settings of the camera a question is about; needed when a profile holds several.</summary>
internal abstract class ModeSettingsOptions : AnswerSettings
{
    [CommandOption("--gain <SETTING>")]
    [Description("The camera's gain setting, when the profile holds several.")]
    [TypeConverter(typeof(Number))]
    public double? Gain { get; init; }

    [CommandOption("--offset <SETTING>")]
    [Description("The camera's offset setting, likewise.")]
    [TypeConverter(typeof(Number))]
    public double? Offset { get; init; }

    [CommandOption("--iso <SETTING>")]
    [Description("The ISO setting, likewise.")]
    [TypeConverter(typeof(Number))]
    public double? Iso { get; init; }

    [CommandOption("--binning <NxN>")]
    [Description("The binning, likewise; default 1x1.")]
    public string? Binning { get; init; }

    [CommandOption("--readout <NAME>")]
    [Description("The read-out mode, likewise.")]
    public string? Readout { get; init; }

    [CommandOption("--setup <FILE>")]
    [Description(
        "Your setup, which stands in for options left out; default: beside the profile, or in your configuration folder."
    )]
    public string? Setup { get; init; }

    [CommandOption("--no-setup")]
    [Description("Ignore any setup.")]
    public bool NoSetup { get; init; }

    /// <summary>Null when the user named none.</summary>
    public ModeSettings? WantedMode =>
        Gain is null && Offset is null && Iso is null && Binning is null && Readout is null
            ? null
            : new ModeSettings
            {
                Gain = Gain,
                Offset = Offset,
                Iso = Iso,
                Binning = Binning ?? "1x1",
                Readout = Readout,
            };

    /// <summary>A frame set completed with the settings that its headers lack; contradictions are refused.</summary>
    public FrameSet Completed(FrameSet set)
    {
        if (WantedMode is not { } wanted)
            return set;
        if (
            Differ(set.Settings.Gain, Gain)
            || Differ(set.Settings.Offset, Offset)
            || Differ(set.Settings.Iso, Iso)
            || (Binning is not null && Binning != set.Settings.Binning)
            || (Readout is not null && set.Settings.Readout is { } readout && Readout != readout)
        )
            throw CommandFailure.WrongCommandLine(
                $"{set.Frames[0].Name} was taken with {SettingsText.Of(set.Settings)}, not "
                    + $"{SettingsText.Of(wanted)}: leave the settings out, or correct the headers with a capture table "
                    + "(--table)."
            );
        return set with
        {
            Settings = set.Settings with
            {
                Gain = set.Settings.Gain ?? Gain,
                Offset = set.Settings.Offset ?? Offset,
                Iso = set.Settings.Iso ?? Iso,
                Readout = set.Settings.Readout ?? Readout,
            },
        };
    }

    private static bool Differ(double? header, double? named) => header is { } a && named is { } b && a != b;
}
