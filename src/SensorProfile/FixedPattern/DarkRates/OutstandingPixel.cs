namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>A pixel that stands out of the ordinary ones: what the maps do not hold of it.</summary>
/// <param name="Index">Place in the frame, row after row.</param>
/// <param name="DoublingUncertainty">Of its own doubling temperature, °C; not a number when it has no law of its
/// own.</param>
/// <param name="Correlation">Of ln rate and activation in that law.</param>
internal readonly record struct OutstandingPixel(int Index, float DoublingUncertainty, float Correlation);
