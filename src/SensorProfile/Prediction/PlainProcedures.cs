using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.Prediction;

/// <summary>
/// What people do when no dark fits: scale or mix some that do not. Tried on every set, for comparison with the
/// computed master.
/// </summary>
/// <remarks>
/// Exposure and temperature: P + q·(M − P), P the bias, M the nearest master, q the ratio of the exposures; between
/// temperatures, the ratio that fits the pixels best, so that the verdict is on scaling and not on how well the ratio
/// was known. Mixing: w·M₁ + (1 − w)·M₂ of the next colder and next warmer master of the same exposure, w so that the
/// typical pixel fits. Variances follow from those of bias and masters.
/// </remarks>
internal sealed class PlainProcedures(
    PatternInput camera,
    ForecastLaws laws,
    PixelKind[] kinds,
    IReadOnlyList<TakenMaster> masters
)
{
    private const double SameExposure = 0.02;
    private const int MinHot = 20;

    /// <summary>Scaled by the exposure, from the nearest other exposure of the same temperature.</summary>
    public IReadOnlyList<MasterComparison> ByExposure() =>
        [
            .. masters
                .Select(m =>
                {
                    TakenMaster? near = masters
                        .Where(o => o.Temperature == m.Temperature && !Same(o, m))
                        .MinBy(o => Math.Abs(Math.Log(o.Exposure.Seconds / m.Exposure.Seconds)));
                    return near is null ? null : Scaled(m, near, m.Exposure.Seconds / near.Exposure.Seconds);
                })
                .OfType<MasterComparison>(),
        ];

    /// <summary>Scaled by the best ratio, from the same exposure at the nearest other temperature.</summary>
    public IReadOnlyList<MasterComparison> ByTemperature() =>
        [
            .. masters
                .Select(m =>
                {
                    TakenMaster? near = masters
                        .Where(o => o.Temperature != m.Temperature && Same(o, m))
                        .MinBy(o => Math.Abs(o.Series.TemperatureCelsius - m.Series.TemperatureCelsius));
                    return near is null ? null : Scaled(m, near, BestRatio(m, near));
                })
                .OfType<MasterComparison>(),
        ];

    /// <summary>Mixed of the next colder and the next warmer temperature.</summary>
    public IReadOnlyList<MasterComparison> Mixed() =>
        [
            .. masters
                .Select(m =>
                {
                    TakenMaster[] others = [.. masters.Where(o => o.Temperature != m.Temperature && Same(o, m))];
                    TakenMaster? colder = others
                        .Where(o => o.Series.TemperatureCelsius < m.Series.TemperatureCelsius)
                        .MaxBy(o => o.Series.TemperatureCelsius);
                    TakenMaster? warmer = others
                        .Where(o => o.Series.TemperatureCelsius > m.Series.TemperatureCelsius)
                        .MinBy(o => o.Series.TemperatureCelsius);
                    return colder is null || warmer is null
                        ? null
                        : Mix(m, colder, warmer, (Light(warmer) - Light(m)) / (Light(warmer) - Light(colder)));
                })
                .OfType<MasterComparison>(),
        ];

    private static bool Same(TakenMaster a, TakenMaster b) =>
        Math.Abs(a.Exposure.TakenSeconds / b.Exposure.TakenSeconds - 1) < SameExposure;

    private double Light(TakenMaster master) => laws.Factor(master.Series.TemperatureCelsius) * master.Exposure.Seconds;

    /// <summary>
    /// Weighted least squares of y = q·x over the hot pixels, x and y the two masters above bias and typical pixel; the
    /// typical pixel's growth where hot pixels are few.
    /// </summary>
    private double BestRatio(TakenMaster taken, TakenMaster near)
    {
        double typical = Light(taken) / Light(near);
        int[] hot = [.. Enumerable.Range(0, kinds.Length).Where(i => kinds[i] == PixelKind.Hot)];
        if (hot.Length < MinHot)
            return typical;
        double[] above = Levels(taken),
            aboveNear = Levels(near);
        double xx = 0,
            xy = 0;
        foreach (int i in hot)
        {
            int channel = camera.Mosaic.Channel(i / camera.Width, i % camera.Width);
            double x = near.Mean[i] - camera.Unlit!.Mean[i] - aboveNear[channel],
                y = taken.Mean[i] - camera.Unlit.Mean[i] - above[channel];
            double weight = 1 / (taken.Variance[i] + typical * typical * near.Variance[i]);
            if (!(x > 0 && y > 0))
                continue;
            (xx, xy) = (xx + weight * x * x, xy + weight * x * y);
        }
        return xx > 0 ? xy / xx : typical;
    }

    /// <summary>Median of a master above the bias over the ordinary pixels of each channel, ADU.</summary>
    private double[] Levels(TakenMaster master)
    {
        List<double>[] values = [.. Enumerable.Range(0, camera.Mosaic.Channels).Select(_ => new List<double>())];
        for (int i = 0; i < kinds.Length; i++)
            if (kinds[i] == PixelKind.Typical)
                values[camera.Mosaic.Channel(i / camera.Width, i % camera.Width)]
                    .Add(master.Mean[i] - camera.Unlit!.Mean[i]);
        return [.. values.Select(v => v.Count == 0 ? 0 : OrderStatistics.Median([.. v]))];
    }

    private MasterComparison Scaled(TakenMaster taken, TakenMaster near, double ratio) => Compare(taken, i =>
        {
            double gain = Gain(i),
                pedestal = camera.Unlit!.Mean[i];
            double variance =
                ratio * ratio * near.Variance[i]
                + (1 - ratio) * (1 - ratio) * PredictionTrial.PedestalVariance(camera, i);
            return new((pedestal + ratio * (near.Mean[i] - pedestal)) * gain, variance * gain * gain, 0);
        });

    private MasterComparison Mix(TakenMaster taken, TakenMaster colder, TakenMaster warmer, double share) =>
        Compare(taken, i =>
        {
            double gain = Gain(i),
                rest = 1 - share;
            return new(
                (share * colder.Mean[i] + rest * warmer.Mean[i]) * gain,
                (share * share * colder.Variance[i] + rest * rest * warmer.Variance[i]) * gain * gain,
                0
            );
        });

    private MasterComparison Compare(TakenMaster taken, Func<int, ComputedPixel> computed) =>
        MasterComparison.Compare(camera, kinds, taken, computed, noise: 1);

    private double Gain(int pixel) => camera.Gains[camera.Mosaic.Channel(pixel / camera.Width, pixel % camera.Width)];
}
