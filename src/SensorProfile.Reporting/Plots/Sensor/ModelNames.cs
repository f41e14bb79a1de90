namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>Names of the temperature laws as words.</summary>
internal static class ModelNames
{
    /// <summary>"two-process+floor" becomes "two processes and a floor".</summary>
    public static string Text(string name)
    {
        bool floor = name.EndsWith("+floor", StringComparison.Ordinal);
        string law = (floor ? name[..^"+floor".Length] : name) switch
        {
            "doubling" => "doubling",
            "arrhenius" => "Arrhenius",
            "two-process" => "two processes",
            string other => other,
        };
        return floor ? law + " and a floor" : law;
    }
}
