namespace SensorProfile.Tests.Pixels;

/// <summary>A test on the laboratory frames: left out, aloud, where they are not there; failing under CI.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LabTheoryAttribute : TheoryAttribute
{
    public LabTheoryAttribute()
    {
        if (Lab.Find("lab-12bit") is null && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = "The laboratory frames (shared/data beside the checkout, or SENSORPROFILE_TESTDATA) are not there.";
    }
}
