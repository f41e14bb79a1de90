namespace SensorProfile.Cli.Tests.Running;

/// <summary>A test that needs a disk to fill: left out, aloud, where this user may not mount one.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FullDiskFactAttribute : FactAttribute
{
    public FullDiskFactAttribute() => Skip = FullDisk.Problem;
}
