namespace SensorProfile.Cli.Tests.Running;

/// <summary>A test of what Linux alone has, such as pipes with a name: left out, aloud, elsewhere.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute()
    {
        if (!OperatingSystem.IsLinux())
            Skip = "Needs Linux.";
    }
}
