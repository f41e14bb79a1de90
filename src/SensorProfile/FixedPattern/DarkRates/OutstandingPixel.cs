namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Data on a pixel that stands out from the ordinary ones, beyond what the maps contain.</summary>
/// <param name="Index">Index in the frame, row by row.</param>
/// <param name="DoublingUncertainty">Standard uncertainty of its own doubling temperature, °C; not a number without a
/// law of its own.</param>
/// <param name="Correlation">Correlation of ln rate and activation in that law.</param>
internal readonly record struct OutstandingPixel(int Index, float DoublingUncertainty, float Correlation);
