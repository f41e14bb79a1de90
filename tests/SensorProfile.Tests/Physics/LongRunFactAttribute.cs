namespace SensorProfile.Tests.Physics;

/// <summary>A test that runs only where an environment variable asks for it.</summary>
public sealed class LongRunFactAttribute : FactAttribute
{
    /// <param name="variable">The variable.</param>
    public LongRunFactAttribute(string variable)
    {
        if (string.IsNullOrEmpty(Environment.GetEnvironmentVariable(variable)))
            Skip = $"A long run: set {variable} to a number.";
    }
}
