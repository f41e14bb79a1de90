using SensorProfile.Raw.LibRaw;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>A test that needs the system's LibRaw: left out, aloud, where there is none.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LibRawTheoryAttribute : TheoryAttribute
{
    /// <param name="linuxOnly">Whether it tests what Linux alone does.</param>
    public LibRawTheoryAttribute(bool linuxOnly = false) =>
        Skip =
            linuxOnly && !OperatingSystem.IsLinux()
                ? "Hard limits of a process are set on Linux alone."
                : LibRawLibrary.Load().Problem;
}
