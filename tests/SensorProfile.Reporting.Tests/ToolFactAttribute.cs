namespace SensorProfile.Reporting.Tests;

/// <summary>
/// A test that needs a command of the machine; where it is missing the test is skipped aloud, and fails when CI=true.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ToolFactAttribute : FactAttribute
{
    public ToolFactAttribute(string command)
    {
        bool present = (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, command)));
        if (!present && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = $"The command {command} is not on this machine (Debian: poppler-utils).";
    }
}
