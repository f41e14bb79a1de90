using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>
/// Places of a dithered stack at which the residuals of a master would be seen, by the same model as the dark matching.
/// </summary>
/// <remarks>
/// Every place is the mean of k sensor pixels. Pixels whose residual lies beyond what noise fills the map with are
/// taken
/// one by one, as far as a stack that clips lets them through (<see cref="ClippedMean"/>); the others as two classes
/// with
/// their variance. The share is that of <see cref="DitheredShare"/>. What the noise map of the fresh darks, brought to
/// the spread of the residual, gives beyond the ordinary pixels is taken off: flicker and shot noise of hot pixels.
/// </remarks>
/// <param name="positions">k, at least 2.</param>
/// <param name="visible">Residual of a place that is seen, ADU.</param>
/// <param name="sampleVariance">Of one sample of an ordinary pixel over the stack: its noise and the spread of the
/// residuals, ADU².</param>
/// <param name="clip">Response of a stack that clips; null for one that does not.</param>
/// <param name="pixelVariance">Noise of one sample of a pixel, ADU².</param>
internal sealed class DitheredPixels(
    int positions,
    double visible,
    double sampleVariance,
    ClippedMean? clip,
    Func<int, double> pixelVariance
)
{
    /// <summary>Residual of one pixel alone that is seen at its places, ADU.</summary>
    public double VisiblePixel => positions * visible;

    /// <summary>Counts them, as a number of places among as many as there are pixels.</summary>
    /// <param name="residual">Without its offset, ADU.</param>
    /// <param name="noise">Noise map of the fresh darks, ADU.</param>
    /// <param name="isHot">Hot in the master.</param>
    /// <param name="limit">Beyond this a pixel's noise alone does not fill the map, ADU.</param>
    /// <param name="noiseScale">Brings the noise map to the spread of the residual.</param>
    /// <param name="ordinaryVariance">Variance of the ordinary residuals, ADU².</param>
    public (double Hot, double New, double Uncertainty) Beyond(
        float[] residual,
        float[] noise,
        Func<int, bool> isHot,
        Func<int, double> limit,
        double noiseScale,
        double ordinaryVariance
    )
    {
        List<Outlier> left = [.. Outliers(residual, 1, isHot, limit)],
            byNoise = [.. Outliers(noise, noiseScale, isHot, limit)];
        double Share(IEnumerable<Outlier> some) => this.Share([.. some], residual.Length, ordinaryVariance);
        double ordinary = Share([]);
        double hot = Share(left.Where(o => o.Hot)) - Share(byNoise.Where(o => o.Hot)),
            all = Share(left) - Share(byNoise);
        double alone = left.Concat(byNoise).Where(o => Math.Abs(o.Kept) > VisiblePixel).Sum(o => o.Weight);
        double seen = Math.Max(0, all) + ordinary;
        hot = Math.Clamp(hot, 0, Math.Max(0, all));
        return (hot * residual.Length, (seen - hot) * residual.Length, positions * Math.Sqrt(alone));
    }

    /// <summary>An outlying pixel, or what is left of it at some of its places.</summary>
    private readonly record struct Outlier(double Kept, bool Hot, double Weight = 1);

    private IEnumerable<Outlier> Outliers(float[] map, double scale, Func<int, bool> isHot, Func<int, double> limit)
    {
        double unit = Math.Sqrt(sampleVariance);
        double[] parts = new double[ClippedMean.Quantiles];
        for (int i = 0; i < map.Length; i++)
        {
            double value = scale * map[i];
            if (!(Math.Abs(value) > limit(i)))
                continue;
            if (clip is null)
            {
                yield return new Outlier(value, isHot(i));
                continue;
            }
            clip.PartsLeft(value / unit, Math.Sqrt(pixelVariance(i)) / unit, parts);
            foreach (double part in parts)
                yield return new Outlier(part * value, isHot(i), 1.0 / parts.Length);
        }
    }

    private double Share(List<Outlier> outliers, int pixels, double ordinaryVariance)
    {
        double weight = 1.0 / pixels,
            ordinary = (1 - outliers.Sum(o => o.Weight) * weight) / 2,
            sigma = Math.Sqrt(Math.Max(0, ordinaryVariance));
        return DitheredShare.Beyond(
            [ordinary, ordinary, .. outliers.Select(o => o.Weight * weight)],
            [sigma, -sigma, .. outliers.Select(o => o.Kept)],
            [false, false, .. outliers.Select(_ => true)],
            positions,
            visible
        );
    }
}
