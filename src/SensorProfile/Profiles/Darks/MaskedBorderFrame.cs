namespace SensorProfile.Profiles.Darks;

/// <summary>The masked border of one frame.</summary>
/// <param name="Frame">Name of the frame.</param>
/// <param name="Exposure">Exposure, s; 0 for a bias frame.</param>
/// <param name="Level">Mean level of the border, ADU.</param>
/// <param name="PixelLevel">Mean level of the pixels that see light, ADU.</param>
internal sealed record MaskedBorderFrame(string Frame, double Exposure, double Level, double PixelLevel);
