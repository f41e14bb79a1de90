namespace SensorProfile.Profiles.Pattern;

/// <summary>Hot pixels in a part of the sensor.</summary>
/// <param name="Where">Name of the part: "upper left", "centre", "lower middle" …</param>
/// <param name="Hot">Hot pixels, without those in bad columns and rows.</param>
/// <param name="Pixels">Number of pixels.</param>
public sealed record DefectArea(string Where, long Hot, long Pixels);
