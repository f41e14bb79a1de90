namespace SensorProfile.Tests.Fitting;

/// <summary>Finds a folder of the shared test data beside the checkout, or where SENSORPROFILE_TESTDATA points.</summary>
internal static class SharedData
{
    public static string? Find(string folder)
    {
        string? named = Environment.GetEnvironmentVariable("SENSORPROFILE_TESTDATA");
        if (!string.IsNullOrEmpty(named) && Directory.Exists(Path.Combine(named, folder))) return Path.Combine(named, folder);
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string candidate = Path.Combine(at.FullName, "shared", "data", folder);
            if (Directory.Exists(candidate)) return candidate;
        }
        return null;
    }

    /// <summary>Null when the data are there or the build must fail without them; otherwise why the test is skipped.</summary>
    public static string? SkipReason(string folder) => Find(folder) is not null || Environment.GetEnvironmentVariable("CI") == "true"
        ? null
        : $"The test data '{folder}' are not beside the checkout; set SENSORPROFILE_TESTDATA to their parent folder.";
}
