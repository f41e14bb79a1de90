namespace SensorProfile.Tests.Frames;

/// <summary>A test on file permissions: they bind neither the superuser nor Windows, so it is skipped there, aloud.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class UnprivilegedFactAttribute : FactAttribute
{
    public UnprivilegedFactAttribute()
    {
        if (Environment.IsPrivilegedProcess || OperatingSystem.IsWindows()) Skip = "File permissions do not bind this user.";
    }
}
