using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Spread of the dark rates themselves, free of temporal noise: the part that two independent halves of the frames
/// share.
/// </summary>
internal static class DarkRateSpread
{
    // robust standard deviations: hot pixels do not belong to the core
    private const double Clip = 4;

    /// <summary>
    /// Covariance over the core pixels of the slopes from odd and even frames, (e-/px/s)²; not a number when a group
    /// cannot be halved or the exposures alone do not allow a line.
    /// </summary>
    /// <param name="input">The camera mode.</param>
    /// <param name="series">The temperature.</param>
    /// <param name="groups">Sampled rows of the frames of that temperature.</param>
    public static double Measure(
        PatternInput input,
        DarkSeries series,
        IReadOnlyList<IReadOnlyList<IFrameSamples>> groups
    )
    {
        if (groups.Any(g => g.Count < 2))
            return double.NaN;
        float[]? odd = Half(input, series, groups, 0),
            even = Half(input, series, groups, 1);
        if (odd is null || even is null)
            return double.NaN;
        double sum = 0;
        for (int c = 0; c < input.Mosaic.Channels; c++)
            sum +=
                Covariance(LevelSampling.Sample(odd, input, c), LevelSampling.Sample(even, input, c))
                * input.Gains[c]
                * input.Gains[c];
        return sum / input.Mosaic.Channels;
    }

    private static float[]? Half(
        PatternInput input,
        DarkSeries series,
        IReadOnlyList<IReadOnlyList<IFrameSamples>> groups,
        int parity
    )
    {
        IReadOnlyList<IFrameSamples>[] half =
        [
            .. groups.Select(g => (IReadOnlyList<IFrameSamples>)[.. g.Where((_, i) => i % 2 == parity)]),
        ];
        DarkExposure[] exposures = [.. series.Exposures.Select((e, g) => new DarkExposure(e.Seconds, half[g]))];
        if (ExposureSlope.Prepare(exposures, 0) is not { } line)
            return null;
        List<float[]> means = [.. half.Select(g => new float[g[0].Width * g[0].Height])];
        GroupMoments.Walk(
            half,
            strip =>
            {
                for (int g = 0; g < half.Length; g++)
                    strip.CopyTo(g, means[g], []);
            },
            input.Walk
        );
        return LevelSampling.Slopes(line, means);
    }

    private static double Covariance(double[] a, double[] b)
    {
        double[] both = GC.AllocateUninitializedArray<double>(a.Length);
        for (int i = 0; i < both.Length; i++)
            both[i] = (a[i] + b[i]) / 2;
        double centre = OrderStatistics.Median(both),
            limit = Clip * OrderStatistics.MadToSigma * OrderStatistics.MedianAbsoluteDeviation(both, centre);
        double meanA = 0,
            meanB = 0,
            product = 0;
        long n = 0;
        for (int i = 0; i < both.Length; i++)
        {
            if (!(Math.Abs(both[i] - centre) <= limit))
                continue;
            n++;
            meanA += a[i];
            meanB += b[i];
            product += (a[i] - centre) * (b[i] - centre);
        }
        (meanA, meanB) = (meanA / n - centre, meanB / n - centre);
        return product / n - meanA * meanB;
    }
}
