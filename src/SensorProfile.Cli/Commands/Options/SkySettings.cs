using System.ComponentModel;
using SensorProfile.NoiseModel.Sky;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>
/// The sky: a number, or an estimate from its brightness and the optics; one default sky when neither is given, or
/// three
/// side by side when asked for.
/// </summary>
internal abstract class SkySettings : ModeSettingsOptions
{
    [CommandOption("--sky <E>")]
    [Description("Sky background, electrons per pixel and second.")]
    [TypeConverter(typeof(Number))]
    public double? Sky { get; init; }

    [CommandOption("--sky-brightness <MAG>")]
    [Description("Estimate the sky from its brightness, mag/arcsec²; needs --focal-ratio and --pixel-size.")]
    [TypeConverter(typeof(Number))]
    public double? Brightness { get; init; }

    [CommandOption("--focal-ratio <N>")]
    [Description("Focal length over aperture, for that estimate.")]
    [TypeConverter(typeof(Number))]
    public double? FocalRatio { get; init; }

    [CommandOption("--pixel-size <UM>")]
    [Description("Pixel size in µm, for that estimate.")]
    [TypeConverter(typeof(Number))]
    public double? PixelSize { get; init; }

    [CommandOption("--bandwidth <NM>")]
    [Description("Width of the filter's pass band in nm, for that estimate; 300 unless said.")]
    [TypeConverter(typeof(Number))]
    public double? Bandwidth { get; init; }

    [CommandOption("--wavelength <NM>")]
    [Description("Centre of the pass band in nm, for that estimate; 550 unless said.")]
    [TypeConverter(typeof(Number))]
    public double? Wavelength { get; init; }

    [CommandOption("--efficiency <SHARE>")]
    [Description("Electrons per photon at the aperture, 0 to 1, for that estimate; 0.5 unless said.")]
    [TypeConverter(typeof(Number))]
    public double? Efficiency { get; init; }

    [CommandOption("--filter <NAME>")]
    [Description("A filter of your setup, for that estimate; its first one unless said.")]
    public string? Filter { get; init; }

    [CommandOption("--three-skies")]
    [Description("Answer for a dark, a suburban and a narrow-band sky side by side.")]
    public bool ThreeSkies { get; init; }

    [CommandOption("--page <DIR>")]
    [Description("Write the answer as a page too: PDF, HTML and the numbers as CSV, in this folder.")]
    public string? Page { get; init; }

    [CommandOption("--overwrite")]
    [Description("Replace what was written there before.")]
    public bool Overwrite { get; init; }

    /// <summary>
    /// The sky to answer for: as it was given, else the default one; null asks for three side by side.
    /// </summary>
    /// <exception cref="CommandFailure">A sky is given and three are asked for.</exception>
    public SkyRate? AskedSky =>
        !ThreeSkies ? NamedSkies.OrDefault(SkyRate)
        : SkyRate is null ? null
        : throw CommandFailure.WrongCommandLine("Give your own sky or ask for --three-skies, not both.");

    /// <summary>Null when nothing was said about the sky.</summary>
    public SkyRate? SkyRate
    {
        get
        {
            if (Sky is { } rate)
                return Brightness is null
                    ? SkyRate.Given(rate)
                    : throw CommandFailure.WrongCommandLine(
                        "Give the sky either with --sky or with --sky-brightness, not both."
                    );
            if (Brightness is null)
                return
                    FocalRatio is null
                    && PixelSize is null
                    && Bandwidth is null
                    && Wavelength is null
                    && Efficiency is null
                    ? null
                    : throw CommandFailure.WrongCommandLine("An estimate of the sky needs --sky-brightness.");
            if (FocalRatio is null || PixelSize is null)
                throw CommandFailure.WrongCommandLine("--sky-brightness needs --focal-ratio and --pixel-size.");
            SkyBrightness usual = new()
            {
                Magnitude = Brightness.Value,
                FocalRatio = FocalRatio.Value,
                PixelMicrometres = PixelSize.Value,
            };
            return (
                usual with
                {
                    BandwidthNanometres = Bandwidth ?? usual.BandwidthNanometres,
                    CentreNanometres = Wavelength ?? usual.CentreNanometres,
                    Efficiency = Efficiency ?? usual.Efficiency,
                }
            ).Estimate();
        }
    }
}
