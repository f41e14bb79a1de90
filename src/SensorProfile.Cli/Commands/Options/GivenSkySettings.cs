using System.ComponentModel;
using SensorProfile.NoiseModel.Sky;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The sky: a number, or an estimate from its brightness and the optics.</summary>
internal abstract class GivenSkySettings : ModeSettingsOptions
{
    [CommandOption("--sky <E>")]
    [Description("Sky background, electrons per pixel and second; default: a suburban sky, broad band.")]
    [TypeConverter(typeof(Number))]
    public double? Sky { get; init; }

    [CommandOption("--sky-brightness <MAG>")]
    [Description("Estimate the sky from its brightness, mag/arcsec²; needs --focal-ratio and --pixel-size.")]
    [TypeConverter(typeof(Number))]
    public double? Brightness { get; init; }

    [CommandOption("--focal-ratio <N>")]
    [Description("Focal length over aperture, for the sky estimate.")]
    [TypeConverter(typeof(Number))]
    public double? FocalRatio { get; init; }

    [CommandOption("--pixel-size <UM>")]
    [Description("Pixel size in µm, for the sky estimate.")]
    [TypeConverter(typeof(Number))]
    public double? PixelSize { get; init; }

    [CommandOption("--bandwidth <NM>")]
    [Description("Width of the filter's pass band in nm, for the sky estimate; default 300.")]
    [TypeConverter(typeof(Number))]
    public double? Bandwidth { get; init; }

    [CommandOption("--wavelength <NM>")]
    [Description("Centre of the pass band in nm, for the sky estimate; default 550.")]
    [TypeConverter(typeof(Number))]
    public double? Wavelength { get; init; }

    [CommandOption("--efficiency <SHARE>")]
    [Description("Electrons per photon at the aperture, 0 to 1, for the sky estimate; default 0.5.")]
    [TypeConverter(typeof(Number))]
    public double? Efficiency { get; init; }

    [CommandOption("--filter <NAME>")]
    [Description("A filter of your setup, for the sky estimate; default: its first one.")]
    public string? Filter { get; init; }

    /// <summary>Null when no sky was given.</summary>
    public SkyRate? SkyRate =>
        new GivenSky(Sky, Brightness, FocalRatio, PixelSize, Bandwidth, Wavelength, Efficiency).Rate;
}
