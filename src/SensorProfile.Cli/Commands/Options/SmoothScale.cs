namespace SensorProfile.Cli.Commands.Options;

/// <summary>The scale over which residuals of glow and level are smooth.</summary>
internal static class SmoothScale
{
    public const string Description =
        "Judge smooth residuals (glow, level) as the eye sees them over this many pixels: against five times the noise "
        + "averaged over PX × PX. Default: against half the noise of one pixel, which is the same as 10.";
}
