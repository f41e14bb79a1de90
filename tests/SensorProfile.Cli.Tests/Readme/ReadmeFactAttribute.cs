using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Readme;

/// <summary>A test of the README; says so when there is none yet.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ReadmeFactAttribute : FactAttribute
{
    public ReadmeFactAttribute()
    {
        if (!File.Exists(Checkout.File("README.md"))) Skip = "README.md does not exist yet.";
    }
}
