using System.Globalization;
using System.Text;
using SensorProfile.Raw.LibRaw;

namespace SensorProfile.Cli;

/// <summary>The <c>sensorprofile</c> command.</summary>
internal static class Program
{
    private static int Main(string[] arguments)
    {
        if (arguments is [LibRawChild.Command, _, ..])
        {
            using Stream answer = Console.OpenStandardOutput();
            return LibRawChild.Run(arguments, answer);
        }
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture =
            CultureInfo.InvariantCulture;
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        if (Console.OutputEncoding.CodePage != Encoding.UTF8.CodePage)
            Console.OutputEncoding = new UTF8Encoding(false);

        using Interruption interruption = new();
        return CommandLine.Run(arguments, Session.OnThisTerminal(interruption.Token));
    }
}
