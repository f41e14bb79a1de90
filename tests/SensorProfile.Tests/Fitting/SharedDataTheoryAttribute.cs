namespace SensorProfile.Tests.Fitting;

/// <summary>A theory on shared data: skipped with its reason when they are missing, failing instead when CI=true.</summary>
internal sealed class SharedDataTheoryAttribute : TheoryAttribute
{
    public SharedDataTheoryAttribute(string folder) => Skip = SharedData.SkipReason(folder);
}
