namespace SensorProfile.Decisions;

/// <summary>Least numbers of frames behind what a profile may lack.</summary>
internal static class MissingFrames
{
    /// <summary>Darks of one long exposure for the distribution of dark rates over the pixels.</summary>
    internal const int DarksForDistribution = 8;
}
