namespace SensorProfile.Desk.Tests.Running;

/// <summary>A test in Debian's Chromium: left out aloud without it, failed when CI=true.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute()
    {
        if (!File.Exists(ChromiumPage.Program) && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = $"{ChromiumPage.Program} is not installed (Debian package chromium).";
    }
}
