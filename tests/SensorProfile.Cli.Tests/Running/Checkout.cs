namespace SensorProfile.Cli.Tests.Running;

/// <summary>The project's files, found from where the tests were built.</summary>
internal static class Checkout
{
    public static string File(string relative) => Path.Combine(Root(), relative);

    /// <summary>
    /// What was built of a project, in the configuration of these tests; where builds go elsewhere, what lies beside them.
    /// </summary>
    public static string Built(string project, string name)
    {
        DirectoryInfo framework = new(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));
        string own = Path.Combine(Root(), project, "bin", framework.Parent!.Name, framework.Name, name);
        return System.IO.File.Exists(own) ? own : Path.Combine(AppContext.BaseDirectory, name);
    }

    private static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "SensorProfile.sln")))
                return folder.FullName;
        throw new DirectoryNotFoundException("The tests do not run inside the project's folder.");
    }
}
