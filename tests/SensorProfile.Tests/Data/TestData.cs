namespace SensorProfile.Tests.Data;

/// <summary>
/// Data that are kept outside the project: below the folder that SENSORPROFILE_TESTDATA names, else below shared/data
/// beside the checkout.
/// </summary>
internal static class TestData
{
    private static readonly string? root = Root();

    /// <summary>Where a file or folder of the data is; null when it is not there.</summary>
    public static string? Find(string relative) =>
        root is not null && System.IO.Path.Combine(root, relative) is var path && System.IO.Path.Exists(path)
            ? path
            : null;

    /// <summary>As <see cref="Find"/>; the message of the failure says what is missing.</summary>
    public static string Path(string relative) =>
        Find(relative)
        ?? throw new FileNotFoundException(
            $"The test data '{relative}' are neither in shared/data beside the checkout nor where "
                + "SENSORPROFILE_TESTDATA points."
        );

    /// <summary>
    /// Why a test on these data is left out; null when they are there, and with CI=true, where a test without its data
    /// fails.
    /// </summary>
    public static string? SkipReason(params string[] needed) =>
        Environment.GetEnvironmentVariable("CI") != "true"
        && Array.Find(needed, folder => Find(folder) is null) is { } missing
            ? $"The test data '{missing}' are not in shared/data beside the checkout; set SENSORPROFILE_TESTDATA "
                + "to the folder that holds them."
            : null;

    private static string? Root()
    {
        if (Environment.GetEnvironmentVariable("SENSORPROFILE_TESTDATA") is { Length: > 0 } named)
            return named;
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string data = System.IO.Path.Combine(folder.FullName, "shared", "data");
            if (Directory.Exists(data))
                return data;
        }
        return null;
    }
}
