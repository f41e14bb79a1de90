namespace SensorProfile.Cli.Commands.Options;

/// <summary>People type percent, the library takes shares.</summary>
internal static class Percent
{
    public static double? ShareOf(double? percent) => percent / 100;
}
