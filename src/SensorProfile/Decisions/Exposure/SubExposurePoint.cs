namespace SensorProfile.Decisions.Exposure;

/// <summary>What read noise costs at one exposure.</summary>
/// <param name="Exposure">s.</param>
/// <param name="Loss">Rise of the noise by read noise, %.</param>
public sealed record SubExposurePoint(double Exposure, double Loss);
