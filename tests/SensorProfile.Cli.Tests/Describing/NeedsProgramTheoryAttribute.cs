namespace SensorProfile.Cli.Tests.Describing;

/// <summary>A test with a program of the system: left out aloud where it is missing, failed when CI=true.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NeedsProgramTheoryAttribute : TheoryAttribute
{
    public NeedsProgramTheoryAttribute(string program)
    {
        bool isThere = (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, program)));
        if (!isThere && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = $"{program} is not on this machine; .ci/run installs it.";
    }
}
