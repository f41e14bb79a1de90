namespace SensorProfile.Reporting.Content;

/// <summary>A picture of the sensor.</summary>
/// <param name="Number">Figure number, counted through the report.</param>
/// <param name="Caption">What is seen.</param>
/// <param name="Picture">The picture.</param>
internal sealed record PictureBlock(int Number, string Caption, MapPicture Picture) : Block;
