using SensorProfile.FixedPattern;

namespace SensorProfile.Prediction;

/// <summary>What people do who have no dark that fits: they scale or mix one that does not. Tried on every set for comparison with the computed master.</summary>
/// <remarks>Exposure and temperature: P + q·(M − P), P the bias, M the nearest master, q the ratio of the exposures or of the typical pixel's rates. Mixing: w·M₁ + (1 − w)·M₂ of the next
/// colder and next warmer master of the same exposure, w so that the typical pixel fits. Variances follow from those of bias and masters.</remarks>
internal sealed class PlainProcedures(PatternInput camera, ForecastLaws laws, PixelKind[] kinds, IReadOnlyList<TakenMaster> masters)
{
    private const double SameExposure = 0.02;

    /// <summary>Scaled by the exposure, from the nearest other exposure of the same temperature.</summary>
    public IReadOnlyList<MasterComparison> ByExposure() => [.. masters.Select(m =>
    {
        TakenMaster? near = masters.Where(o => o.Temperature == m.Temperature && !Same(o, m)).MinBy(o => Math.Abs(Math.Log(o.Exposure.Seconds / m.Exposure.Seconds)));
        return near is null ? null : Scaled(m, near, m.Exposure.Seconds / near.Exposure.Seconds);
    }).OfType<MasterComparison>()];

    /// <summary>Scaled as the typical pixel grows, from the same exposure at the nearest other temperature.</summary>
    public IReadOnlyList<MasterComparison> ByTemperature() => [.. masters.Select(m =>
    {
        TakenMaster? near = masters.Where(o => o.Temperature != m.Temperature && Same(o, m)).MinBy(o => Math.Abs(o.Series.TemperatureCelsius - m.Series.TemperatureCelsius));
        return near is null ? null : Scaled(m, near, Light(m) / Light(near));
    }).OfType<MasterComparison>()];

    /// <summary>Mixed of the next colder and the next warmer temperature.</summary>
    public IReadOnlyList<MasterComparison> Mixed() => [.. masters.Select(m =>
    {
        TakenMaster[] others = [.. masters.Where(o => o.Temperature != m.Temperature && Same(o, m))];
        TakenMaster? colder = others.Where(o => o.Series.TemperatureCelsius < m.Series.TemperatureCelsius).MaxBy(o => o.Series.TemperatureCelsius);
        TakenMaster? warmer = others.Where(o => o.Series.TemperatureCelsius > m.Series.TemperatureCelsius).MinBy(o => o.Series.TemperatureCelsius);
        return colder is null || warmer is null ? null : Mix(m, colder, warmer, (Light(warmer) - Light(m)) / (Light(warmer) - Light(colder)));
    }).OfType<MasterComparison>()];

    private static bool Same(TakenMaster a, TakenMaster b) => Math.Abs(a.Exposure.TakenSeconds / b.Exposure.TakenSeconds - 1) < SameExposure;

    private double Light(TakenMaster master) => laws.Factor(master.Series.TemperatureCelsius) * master.Exposure.Seconds;

    private MasterComparison Scaled(TakenMaster taken, TakenMaster near, double ratio) => MasterComparison.Of(camera, kinds, taken, i =>
    {
        double gain = Gain(i), pedestal = camera.Unlit!.Mean[i];
        double variance = ratio * ratio * near.Variance[i] + (1 - ratio) * (1 - ratio) * PredictionTrial.PedestalVariance(camera, i);
        return ((pedestal + ratio * (near.Mean[i] - pedestal)) * gain, variance * gain * gain);
    });

    private MasterComparison Mix(TakenMaster taken, TakenMaster colder, TakenMaster warmer, double share) => MasterComparison.Of(camera, kinds, taken, i =>
    {
        double gain = Gain(i), rest = 1 - share;
        return ((share * colder.Mean[i] + rest * warmer.Mean[i]) * gain, (share * share * colder.Variance[i] + rest * rest * warmer.Variance[i]) * gain * gain);
    });

    private double Gain(int pixel) => camera.Gains[camera.Mosaic.Channel(pixel / camera.Width, pixel % camera.Width)];
}
