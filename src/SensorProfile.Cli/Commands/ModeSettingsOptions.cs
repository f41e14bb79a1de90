using System.ComponentModel;
using SensorProfile.Profiles;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

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
    [Description("The binning, likewise; 1x1 unless said.")]
    public string? Binning { get; init; }

    /// <summary>Null when the user named none.</summary>
    public ModeSettings? WantedMode => Gain is null && Offset is null && Iso is null && Binning is null
        ? null
        : new ModeSettings { Gain = Gain, Offset = Offset, Iso = Iso, Binning = Binning ?? "1x1" };
}
