using System.ComponentModel;
using SensorProfile.NoiseModel.Sky;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>
/// A question answered for one sky (the default one if none is given) or for three side by side, optionally as a page.
/// </summary>
internal abstract class SkySettings : GivenSkySettings
{
    [CommandOption("--three-skies")]
    [Description("Answer for a dark, a suburban and a narrow-band sky side by side.")]
    public bool ThreeSkies { get; init; }

    [CommandOption("--page <DIR>")]
    [Description("Also write the answer as a page into this folder: PDF, HTML and the numbers as CSV.")]
    public string? Page { get; init; }

    [CommandOption("--overwrite")]
    [Description("Replace what an earlier run wrote there.")]
    public bool Overwrite { get; init; }

    /// <summary>
    /// The sky to answer for: as given, or else the default one; null asks for three side by side.
    /// </summary>
    /// <exception cref="CommandFailure">A sky is given and three are asked for.</exception>
    public SkyRate? AskedSky =>
        !ThreeSkies ? NamedSkies.OrDefault(SkyRate)
        : SkyRate is null ? null
        : throw CommandFailure.WrongCommandLine("Give your own sky or ask for --three-skies, not both.");
}
