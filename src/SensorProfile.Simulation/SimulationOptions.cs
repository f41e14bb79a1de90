namespace SensorProfile.Simulation;

/// <summary>Options for writing a night.</summary>
public sealed record SimulationOptions
{
    /// <summary>
    /// Largest number of threads; −1 (default) for as many as there are processors. The files do not depend on it.
    /// </summary>
    public int Threads { get; init; } = -1;

    /// <summary>Whether files of the same name may be replaced. Default false.</summary>
    public bool Overwrite { get; init; }

    /// <summary>Whether to write <c>truth.json</c> and the maps it names. Default true.</summary>
    public bool WriteTruth { get; init; } = true;

    /// <summary>Prefix of every frame's file name, for several nights in one folder. Default none.</summary>
    public string FilePrefix { get; init; } = "";
}
