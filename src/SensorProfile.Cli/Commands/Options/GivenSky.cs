using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The sky as the user gave it.</summary>
/// <param name="Sky">--sky, e-/px/s.</param>
/// <param name="Brightness">--sky-brightness, mag/arcsec².</param>
/// <param name="FocalRatio">--focal-ratio.</param>
/// <param name="PixelSize">--pixel-size, µm.</param>
/// <param name="Bandwidth">--bandwidth, nm.</param>
/// <param name="Wavelength">--wavelength, nm.</param>
/// <param name="Efficiency">--efficiency, 0 to 1.</param>
internal sealed record GivenSky(
    double? Sky,
    double? Brightness,
    double? FocalRatio,
    double? PixelSize,
    double? Bandwidth,
    double? Wavelength,
    double? Efficiency
)
{
    /// <summary>Null when no sky was given.</summary>
    /// <exception cref="CommandFailure">The options contradict each other, or lack something that an estimate needs.</exception>
    public SkyRate? Rate
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
