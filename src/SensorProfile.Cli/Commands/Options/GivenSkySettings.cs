using System.ComponentModel;
using SensorProfile.NoiseModel.Sky;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The sky: a number, or an estimate from its brightness and the optics.</summary>
internal abstract class GivenSkySettings : ModeSettingsOptions
{
    [CommandOption("--sky <E>")]
    [Description("Sky background, electrons per pixel and second; a suburban sky, broad band, unless said.")]
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

    /// <summary>Null when no sky was given.</summary>
    public SkyRate? SkyRate =>
        new GivenSky(Sky, Brightness, FocalRatio, PixelSize, Bandwidth, Wavelength, Efficiency).Rate;
}
