namespace SensorProfile.Decisions.Exposure;

/// <summary>The shortest exposure in which read noise raises the noise by no more than an accepted loss.</summary>
internal static class SubExposure
{
    /// <summary>c·R²/B with c = 1/((1+p)² − 1), s: there √(1 + R²/(B·t)) − 1 = p.</summary>
    /// <param name="readVariance">R² (with the quantisation), e-².</param>
    /// <param name="background">B, sky and dark together, e-/px/s.</param>
    /// <param name="loss">p.</param>
    internal static double Shortest(double readVariance, double background, double loss) =>
        readVariance / background / ((1 + loss) * (1 + loss) - 1);

    /// <summary>Rounded up to a timer setting: tenths of a second below ten, else whole seconds.</summary>
    internal static double Up(double seconds) => seconds < 10 ? Math.Ceiling(seconds * 10) / 10 : Math.Ceiling(seconds);
}
