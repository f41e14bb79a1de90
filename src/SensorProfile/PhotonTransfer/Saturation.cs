using SensorProfile.Profiles.Response;

namespace SensorProfile.PhotonTransfer;

/// <summary>The level at which a channel stops responding to more light.</summary>
/// <param name="SignalAdu">Saturation above the pedestal, ADU.</param>
/// <param name="StandardUncertaintyAdu">Standard uncertainty, ADU.</param>
/// <param name="By">What limits the signal first.</param>
/// <param name="PeakSignal">Signal of the pair with the highest variance (the EMVA 1288 rule), ADU above the
/// pedestal.</param>
/// <param name="Method">How the value was found.</param>
internal sealed record SaturationLevel(
    double SignalAdu,
    double StandardUncertaintyAdu,
    SaturationCause By,
    double PeakSignal,
    string Method
);

/// <summary>Finds saturation in a photon-transfer series.</summary>
/// <remarks>EMVA Standard 1288, Release 4.0 Linear, takes the level at which the temporal variance peaks. With the
/// coarse steps of an evening's flats, that level lies up to one step too low, so here it only serves to find the
/// saturated pairs. The value itself is read where the camera shows it: at the top code when the codes end first, on
/// the plateau of the flats beyond the peak when the pixel fills first.</remarks>
internal static class Saturation
{
    /// <summary>
    /// A pair lies beyond the peak when its variance is below this share of the highest one by more than 5 standard
    /// errors.
    /// </summary>
    private const double FallenShare = 0.8;

    /// <summary>
    /// A pair with less than this share of the highest variance is on the plateau: hardly any pixel still responds to
    /// light.
    /// </summary>
    private const double PlateauShare = 0.1;

    /// <summary>
    /// With more than this share of the pixels at one code, the converter has reached its end, not the pixel.
    /// </summary>
    private const double PileUpShare = 0.3;

    /// <param name="points">One channel's pairs, in any order.</param>
    /// <param name="topCodeSignal">The channel's highest code above the pedestal, ADU.</param>
    /// <param name="codeStep">ADU between two usable codes.</param>
    /// <returns>Null when the series never saturates.</returns>
    public static SaturationLevel? Find(IReadOnlyList<FlatPairPoint> points, double topCodeSignal, int codeStep)
    {
        if (points.Count == 0)
            return null;
        FlatPairPoint peak = points.MaxBy(p => p.Variance)!;
        FlatPairPoint[] beyond = [.. points.Where(p => p.MeanSignal > peak.MeanSignal && HasFallen(p, peak))];
        FlatPairPoint[] piledUp = [.. points.Where(p => p.TopCodeShare >= PileUpShare)];

        if (piledUp.Length > 0)
            return new(
                topCodeSignal,
                codeStep / Math.Sqrt(12),
                SaturationCause.Adc,
                peak.MeanSignal,
                "highest code of the flats, at which the pixels pile up"
            );
        if (beyond.Length == 0)
            return null;

        double[] plateau = [.. beyond.Where(p => p.Variance < PlateauShare * peak.Variance).Select(p => p.MeanSignal)];
        if (plateau.Length > 0)
        {
            double scatter = plateau.Length > 1 ? (plateau.Max() - plateau.Min()) / 2 : 0;
            double noise = Math.Sqrt(beyond[0].Variance / beyond[0].Pixels);
            return new(
                plateau.Average(),
                Math.Max(Math.Max(scatter, noise), 1e-4 * plateau.Average()),
                SaturationCause.Pixel,
                peak.MeanSignal,
                "plateau of the flats beyond the variance peak (EMVA 1288)"
            );
        }

        // The last pair is partly saturated: the end lies between the peak and a little beyond the last mean.
        double low = peak.MeanSignal,
            high = Math.Max(beyond.Max(p => p.MeanSignal), low);
        return new(
            (low + high) / 2,
            Math.Max((high - low) / Math.Sqrt(12), 0.01 * high),
            SaturationCause.Pixel,
            peak.MeanSignal,
            "between the variance peak (EMVA 1288) and the brightest flat"
        );
    }

    private static bool HasFallen(FlatPairPoint point, FlatPairPoint peak)
    {
        double standardError = peak.Variance * Math.Sqrt(2.0 / Math.Max(1, point.Pixels - 1));
        return point.Variance < FallenShare * peak.Variance && peak.Variance - point.Variance > 5 * standardError;
    }
}
