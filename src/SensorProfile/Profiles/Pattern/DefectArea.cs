namespace SensorProfile.Profiles.Pattern;

/// <summary>Hot pixels in a part of the sensor.</summary>
/// <param name="Where">In words: "upper left", "centre", "lower middle" …</param>
/// <param name="Hot">Hot pixels, those in bad columns and rows left out.</param>
/// <param name="Pixels">Pixels.</param>
public sealed record DefectArea(string Where, long Hot, long Pixels);
