using System.Diagnostics;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>A tiny file system in memory, where the machine allows one: <see cref="FullDiskFactAttribute"/>.</summary>
internal static class FullDisk
{
    private static readonly Lazy<string?> problem = new(Try);

    /// <summary>Why there can be none here; null when there can.</summary>
    public static string? Problem => problem.Value;

    public static void Mount(string folder, int kilobytes)
    {
        Directory.CreateDirectory(folder);
        Assert.True(Mounts(folder, kilobytes), $"{folder}: no file system of {kilobytes} kB could be mounted.");
    }

    public static void Unmount(string folder) => Run("umount", folder);

    private static string? Try()
    {
        const string why = "Needs the right to mount a file system: run it as root on Linux.";
        if (!OperatingSystem.IsLinux() || Environment.UserName != "root")
            return why;
        string folder = Directory.CreateTempSubdirectory("mount-").FullName;
        bool mounts = Mounts(folder, 8);
        if (mounts)
            Unmount(folder);
        Directory.Delete(folder);
        return mounts ? null : why;
    }

    private static bool Mounts(string folder, int kilobytes) =>
        Run("mount", "-t", "tmpfs", "-o", FormattableString.Invariant($"size={kilobytes}k"), "tmpfs", folder) == 0;

    private static int Run(string file, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(file, arguments) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode;
    }
}
