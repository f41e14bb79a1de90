namespace SensorProfile.Reporting;

/// <summary>
/// A map of the sensor, reduced to a picture for the report: the renderer chooses grey or colour, the values are
/// the map's.
/// </summary>
/// <param name="Mode">Index of the mode in the profile.</param>
/// <param name="Title">What the map shows, for example "Amplifier glow".</param>
/// <param name="Unit">Unit of the values, as profiles write it.</param>
/// <param name="Width">Columns of the picture, at most a few hundred.</param>
/// <param name="Height">Rows of the picture; the first is the first row of the frame's file.</param>
/// <param name="Values">Row by row; NaN where nothing was measured.</param>
/// <param name="Low">Value shown darkest.</param>
/// <param name="High">Value shown brightest.</param>
public sealed record MapPicture(
    int Mode,
    string Title,
    string Unit,
    int Width,
    int Height,
    IReadOnlyList<float> Values,
    double Low,
    double High
)
{
    /// <summary>
    /// Name of the map's file without its extension, such as "dark-rate"; empty when it is not one of ours.
    /// </summary>
    public string Map { get; init; } = "";

    /// <summary>Width of the frame, px; 0 when it is that of the picture.</summary>
    public int FrameWidth { get; init; }

    /// <summary>Height of the frame, px; 0 when it is that of the picture.</summary>
    public int FrameHeight { get; init; }

    /// <summary>Whether equal steps of grey stand for equal ratios rather than equal differences.</summary>
    public bool Logarithmic { get; init; }

    /// <summary>
    /// Names of the classes that the values 1, 2, 3 … stand for (0 for none); empty when the values are numbers.
    /// </summary>
    public IReadOnlyList<string> Classes { get; init; } = [];
}
