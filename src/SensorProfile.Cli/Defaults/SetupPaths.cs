using SensorProfile.Setup;

namespace SensorProfile.Cli.Defaults;

/// <summary>How a setup stores paths: relative to its own folder for what lies inside it, in full for what lies elsewhere.</summary>
internal static class SetupPaths
{
    public static ObservingSetup From(ObservingSetup setup, string folder) =>
        setup with
        {
            Camera = setup.Camera is { } camera ? camera with { Profile = From(camera.Profile, folder) } : null,
            Sky = setup.Sky is { } sky ? sky with { Lights = From(sky.Lights, folder) } : null,
            Cooling = setup.Cooling is { } cooling ? cooling with { Nights = From(cooling.Nights, folder) } : null,
        };

    private static string? From(string? path, string folder)
    {
        if (path is null)
            return null;
        string relative = Path.GetRelativePath(folder, path);
        bool inside = !Path.IsPathRooted(relative) && relative.Split(Path.DirectorySeparatorChar)[0] != "..";
        return inside ? relative : Path.GetFullPath(path);
    }
}
