namespace SensorProfile.Cli.Tests.Running;

/// <summary>The project's files, found from where the tests were built.</summary>
internal static class Checkout
{
    public static string File(string relative) => Path.Combine(Root(), relative);

    private static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "SensorProfile.sln")))
                return folder.FullName;
        throw new DirectoryNotFoundException("The tests do not run inside the project's folder.");
    }
}
