namespace SensorProfile.NoiseModel.Camera;

/// <summary>Findings about what a profile lacks.</summary>
internal static class MissingInputs
{
    internal static Finding Distribution(string consequence) =>
        new(
            FindingCodes.PixelDistributionMissing,
            Severity.Warning,
            $"The profile has no distribution of dark rates over the pixels, so {consequence}: characterise again "
                + "with at least 8 darks of one long exposure."
        );
}
