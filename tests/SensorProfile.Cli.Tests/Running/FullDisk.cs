using System.Diagnostics;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>A tiny file system in memory, where the machine allows one.</summary>
internal static class FullDisk
{
    public static bool TryMount(string folder, int kilobytes)
    {
        if (!OperatingSystem.IsLinux() || Environment.UserName != "root")
            return false;
        Directory.CreateDirectory(folder);
        return Run("mount", "-t", "tmpfs", "-o", FormattableString.Invariant($"size={kilobytes}k"), "tmpfs", folder)
            == 0;
    }

    public static void Unmount(string folder) => Run("umount", folder);

    private static int Run(string file, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(file, arguments) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode;
    }
}
