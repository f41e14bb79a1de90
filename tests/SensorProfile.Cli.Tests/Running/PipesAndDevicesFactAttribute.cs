namespace SensorProfile.Cli.Tests.Running;

/// <summary>A test of pipes and devices that have names among the files: left out, aloud, where there are none.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PipesAndDevicesFactAttribute : FactAttribute
{
    private static readonly string[] needed = ["/usr/bin/mkfifo", "/dev/zero", "/dev/full", "/dev/null"];

    public PipesAndDevicesFactAttribute() =>
        Skip = needed.FirstOrDefault(name => !File.Exists(name)) is { } missing
            ? $"{missing} is not on this machine: it has no such pipes or devices to try."
            : null;
}
