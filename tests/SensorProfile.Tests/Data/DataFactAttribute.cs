namespace SensorProfile.Tests.Data;

/// <summary>
/// A test on data kept outside the project: left out, aloud, where they are missing; failing then with CI=true.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class DataFactAttribute : FactAttribute
{
    public DataFactAttribute(params string[] needed) => Skip = TestData.SkipReason(needed);
}
