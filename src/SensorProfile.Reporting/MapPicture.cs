namespace SensorProfile.Reporting;

/// <summary>A map of the sensor, reduced to a picture for the report: grey or colour is the renderer's choice, the values are the map's.</summary>
/// <param name="Mode">Index of the mode in the profile.</param>
/// <param name="Title">What the map shows, for example "Amplifier glow".</param>
/// <param name="Unit">Unit of the values, as profiles write it.</param>
/// <param name="Width">Columns of the picture, at most a few hundred.</param>
/// <param name="Height">Rows of the picture; the first is the first row of the frame's file.</param>
/// <param name="Values">Row by row; NaN where nothing was measured.</param>
/// <param name="Low">Value shown darkest.</param>
/// <param name="High">Value shown brightest.</param>
public sealed record MapPicture(int Mode, string Title, string Unit, int Width, int Height, IReadOnlyList<float> Values, double Low, double High);
