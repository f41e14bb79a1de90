namespace SensorProfile.NoiseModel.Camera;

/// <summary>The classes of a part of the sensor that glows alike.</summary>
/// <param name="First">Place of its first class.</param>
/// <param name="Count">Its classes.</param>
/// <param name="Share">Share of all pixels, 0…1.</param>
/// <param name="Glow">Its glow, e-/px/s at the reference temperature.</param>
/// <param name="LowerQuartile">Class that a quarter of its pixels do not exceed.</param>
/// <param name="Middle">Class of its median pixel.</param>
/// <param name="UpperQuartile">Class that three quarters of its pixels do not exceed.</param>
internal readonly record struct PixelGroup(
    int First,
    int Count,
    double Share,
    double Glow,
    int LowerQuartile,
    int Middle,
    int UpperQuartile
)
{
    /// <summary>The group that begins at a class and ends with the last.</summary>
    internal static PixelGroup Of(List<PixelClass> classes, int first, double share, double glow)
    {
        int AtShare(double part)
        {
            double below = 0;
            for (int i = first; i < classes.Count; i++)
            {
                below += classes[i].Weight;
                if (below >= part * share)
                    return i;
            }
            return classes.Count - 1;
        }
        return new(first, classes.Count - first, share, glow, AtShare(0.25), AtShare(0.5), AtShare(0.75));
    }
}
