namespace SensorProfile.Tests.Frames;

/// <summary>Where the laboratory frames are.</summary>
internal static class LabFrames
{
    /// <summary>The data folder; null when there is none.</summary>
    public static string? Folder { get; } = Find();

    /// <summary>A path in it; the message of the failure says what is missing.</summary>
    public static string Path(string relative) =>
        System.IO.Path.Combine(Folder ?? throw new DirectoryNotFoundException("shared/data is not beside the checkout and SENSORPROFILE_TESTDATA is not set."), relative);

    private static string? Find()
    {
        if (Environment.GetEnvironmentVariable("SENSORPROFILE_TESTDATA") is { Length: > 0 } given) return Directory.Exists(given) ? given : null;
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string candidate = System.IO.Path.Combine(folder.FullName, "shared", "data");
            if (Directory.Exists(candidate)) return candidate;
        }
        return null;
    }
}
