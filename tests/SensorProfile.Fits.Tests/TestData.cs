namespace SensorProfile.Fits.Tests;

/// <summary>Finds the shared test data: SENSORPROFILE_TESTDATA, or shared/data beside the checkout.</summary>
internal static class TestData
{
    public static string? Folder { get; } = Find();

    public static bool MustBeThere => Environment.GetEnvironmentVariable("CI") == "true";

    public static string Zoo(string file) => Path.Combine(Folder ?? throw new DirectoryNotFoundException("The test data are missing."), "fits-zoo", file);

    private static string? Find()
    {
        if (Environment.GetEnvironmentVariable("SENSORPROFILE_TESTDATA") is { Length: > 0 } given) return given;
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string data = Path.Combine(folder.FullName, "shared", "data");
            if (Directory.Exists(data)) return data;
        }

        return null;
    }
}
