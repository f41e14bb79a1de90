namespace SensorProfile.Cli.Commands.Options;

/// <summary>Converts the percent that people type to the shares that the library takes.</summary>
internal static class Percent
{
    public static double? ShareOf(double? percent) => percent / 100;
}
