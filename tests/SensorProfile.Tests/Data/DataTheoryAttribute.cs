namespace SensorProfile.Tests.Data;

/// <summary>
/// A theory on data kept outside the project: left out, aloud, where they are missing; failing then with CI=true.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class DataTheoryAttribute : TheoryAttribute
{
    public DataTheoryAttribute(params string[] needed) => Skip = TestData.SkipReason(needed);
}
