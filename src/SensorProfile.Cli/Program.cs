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
        Encoding before = Console.OutputEncoding,
            terminal = SpeakUtf8(before);
        try
        {
            using Interruption interruption = new();
            return CommandLine.Run(arguments, Session.OnThisTerminal(interruption.Token, terminal));
        }
        finally
        {
            // a console of Windows keeps its code page when the program ends: what runs there next may count on its own
            if (OperatingSystem.IsWindows() && before.CodePage != Encoding.UTF8.CodePage)
                Console.OutputEncoding = before;
        }
    }

    /// <summary>
    /// Pipes get UTF-8 everywhere. A console of Windows can be told so too; another terminal takes what its locale says,
    /// and so does a console that will not be told.
    /// </summary>
    /// <returns>The characters that the terminal takes.</returns>
    private static Encoding SpeakUtf8(Encoding before)
    {
        if (before.CodePage == Encoding.UTF8.CodePage)
            return before;
        try
        {
            Console.OutputEncoding = new UTF8Encoding(false);
            return OperatingSystem.IsWindows() ? Console.OutputEncoding : before;
        }
        catch (IOException)
        {
            return before;
        }
    }
}
