using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>
/// Pixels of a dithered stack at which the residuals of a master would be visible, by the same model as the dark
/// matching.
/// </summary>
/// <remarks>
/// Each stack pixel is the mean of k sensor pixels. Sensor pixels with a residual beyond the noise are treated one by
/// one, the others as two classes with their variance. The share is that of <see cref="DitheredShare"/>, or of
/// <see cref="RejectedShare"/> for a stack that rejects outliers. Outliers in the noise map of the fresh darks, scaled to
/// the spread of the residual, are subtracted: they come from flicker and from the shot noise of hot pixels.
/// </remarks>
/// <param name="positions">k, at least 2.</param>
/// <param name="visible">Smallest visible residual of a stack pixel, ADU.</param>
/// <param name="sampleVariance">Variance of one sample of an ordinary pixel over the stack: its noise and the spread of
/// the residuals, ADU².</param>
/// <param name="clip">Response of a stack that clips outliers; null for one that does not.</param>
/// <param name="pixelVariance">Noise variance of one sample of a pixel, ADU².</param>
internal sealed class DitheredPixels(
    int positions,
    double visible,
    double sampleVariance,
    ClippedMean? clip,
    Func<int, double> pixelVariance
)
{
    /// <summary>Smallest residual of a single sensor pixel that is visible in the stack, ADU.</summary>
    public double VisiblePixel => positions * visible;

    /// <summary>Counts these stack pixels, for a stack as large as the sensor.</summary>
    /// <param name="residual">Residual without its offset, ADU.</param>
    /// <param name="noise">Noise map of the fresh darks, ADU.</param>
    /// <param name="isHot">Whether a pixel is hot in the master.</param>
    /// <param name="limit">Residual beyond which a pixel is an outlier, ADU.</param>
    /// <param name="noiseScale">Factor that scales the noise map to the spread of the residual.</param>
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
        double alone = left.Concat(byNoise).Sum(SeenAlone);
        double seen = Math.Max(0, all) + ordinary;
        hot = Math.Clamp(hot, 0, Math.Max(0, all));
        return (hot * residual.Length, (seen - hot) * residual.Length, positions * Math.Sqrt(alone));
    }

    /// <summary>An outlying pixel.</summary>
    private readonly record struct Outlier(double Residual, double Deviation, bool Hot);

    private IEnumerable<Outlier> Outliers(float[] map, double scale, Func<int, bool> isHot, Func<int, double> limit)
    {
        for (int i = 0; i < map.Length; i++)
            if (scale * map[i] is double value && Math.Abs(value) > limit(i))
                yield return new Outlier(value, Math.Sqrt(pixelVariance(i)), isHot(i));
    }

    /// <summary>Share of the stack pixels it enters at which a sensor pixel is visible by itself.</summary>
    private double SeenAlone(Outlier outlier)
    {
        if (clip is null)
            return Math.Abs(outlier.Residual) > VisiblePixel ? 1 : 0;
        double unit = Math.Sqrt(sampleVariance),
            share = 0;
        Span<double> parts = stackalloc double[ClippedMean.PlaceShares.Length];
        clip.PartsLeft(outlier.Residual / unit, outlier.Deviation / unit, parts);
        for (int q = 0; q < parts.Length; q++)
            if (Math.Abs(parts[q] * outlier.Residual) > VisiblePixel)
                share += ClippedMean.PlaceShares[q];
        return share;
    }

    private double Share(List<Outlier> outliers, int pixels, double ordinaryVariance)
    {
        double weight = 1.0 / pixels,
            ordinary = (1 - outliers.Count * weight) / 2,
            sigma = Math.Sqrt(Math.Max(0, ordinaryVariance)),
            unit = Math.Sqrt(sampleVariance);
        if (clip is not null)
            return new RejectedShare(clip, positions, visible).Beyond(
                [
                    new(ordinary, sigma, unit),
                    new(ordinary, -sigma, unit),
                    .. outliers.Select(o => new RejectedShare.Member(weight, o.Residual, o.Deviation)),
                ],
                unit,
                sigma,
                shift: 0
            );
        return DitheredShare.Beyond(
            [ordinary, ordinary, .. outliers.Select(_ => weight)],
            [sigma, -sigma, .. outliers.Select(o => o.Residual)],
            [false, false, .. outliers.Select(_ => true)],
            positions,
            visible
        );
    }
}
