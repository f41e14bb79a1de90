using System.ComponentModel;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The options of commands that read frames on disk.</summary>
internal abstract class FrameSettings : AnswerSettings
{
    [CommandArgument(0, "<PATH>")]
    [Description("FITS files, DNG or other raw files, TIFF mosaics, or folders that are searched with all below them.")]
    public string[] Paths { get; init; } = [];

    [CommandOption("--names-say")]
    [Description(
        "Where a header does not say what kind a frame is, go by the names of file and folder (bias, dark, flat …)."
    )]
    public bool NamesSay { get; init; }

    [CommandOption("--overwrite")]
    [Description("Replace earlier results.")]
    public bool Overwrite { get; init; }
}
