using System.ComponentModel;
using System.Diagnostics;

namespace SensorProfile.Cli.LocalPage;

/// <summary>Opens an address in the user's browser.</summary>
internal static class Browser
{
    /// <summary>Tries to open it; failure is no error, since the address is printed anyway.</summary>
    public static void Open(Uri address)
    {
        try
        {
            ProcessStartInfo start = OperatingSystem.IsWindows()
                ? new ProcessStartInfo(address.AbsoluteUri) { UseShellExecute = true }
                : new ProcessStartInfo(OperatingSystem.IsMacOS() ? "open" : "xdg-open", [address.AbsoluteUri])
                {
                    RedirectStandardOutput = true,
                    RedirectStandardError = true,
                };
            Process.Start(start)?.Dispose();
        }
        catch (Exception problem) when (problem is Win32Exception or InvalidOperationException or IOException)
        {
            // this system has no opener
        }
    }
}
