using SensorProfile.Raw.LibRaw;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>A test that needs the system's LibRaw: left out, aloud, where there is none.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LibRawTheoryAttribute : TheoryAttribute
{
    public LibRawTheoryAttribute() => Skip = LibRawLibrary.Load().Problem;
}
