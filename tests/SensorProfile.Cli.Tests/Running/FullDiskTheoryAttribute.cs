namespace SensorProfile.Cli.Tests.Running;

/// <summary>A test that needs a disk to fill: left out, aloud, where this user may not mount one.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FullDiskTheoryAttribute : TheoryAttribute
{
    public FullDiskTheoryAttribute() => Skip = FullDisk.Problem;
}
