namespace SensorProfile.Simulation;

/// <summary>An invalid camera description: place, problem and remedy.</summary>
public sealed class CameraDescriptionException : Exception
{
    /// <summary>Creates the error.</summary>
    /// <param name="file">File, or "camera description" for text from elsewhere.</param>
    /// <param name="jsonPath">Place in the JSON, such as "$.darkCurrent.floor".</param>
    /// <param name="problem">What was found.</param>
    /// <param name="remedy">What to do.</param>
    /// <param name="inner">The underlying error, if there is one.</param>
    public CameraDescriptionException(
        string file,
        string jsonPath,
        string problem,
        string remedy,
        Exception? inner = null
    )
        : base($"{file}, {jsonPath}: {problem} {remedy}", inner)
    {
        File = file;
        JsonPath = jsonPath;
        Problem = problem;
        Remedy = remedy;
    }

    /// <summary>File, or "camera description".</summary>
    public string File { get; }

    /// <summary>Place in the JSON.</summary>
    public string JsonPath { get; }

    /// <summary>What was found.</summary>
    public string Problem { get; }

    /// <summary>What to do.</summary>
    public string Remedy { get; }
}
