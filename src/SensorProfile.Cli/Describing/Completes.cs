namespace SensorProfile.Cli.Describing;

/// <summary>What a shell can offer where a value is typed.</summary>
internal enum Completes
{
    /// <summary>A number or a name that only the user knows.</summary>
    Nothing,

    /// <summary>Words of a fixed list.</summary>
    Words,

    /// <summary>Files and the folders that lead to them.</summary>
    Files,

    /// <summary>Folders alone.</summary>
    Folders,
}
