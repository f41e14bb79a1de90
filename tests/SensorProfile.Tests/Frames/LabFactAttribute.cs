namespace SensorProfile.Tests.Frames;

/// <summary>A test on the laboratory frames, which are kept outside the project: skipped, aloud, where they are not there; failing under CI.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LabFactAttribute : FactAttribute
{
    public LabFactAttribute()
    {
        if (LabFrames.Folder is null && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = "The laboratory frames (shared/data beside the checkout, or SENSORPROFILE_TESTDATA) are not there.";
    }
}
