using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Reporting.Tests;

internal static partial class TarnProfile
{
    private static FixedPatternProfile Pattern() =>
        new()
        {
            ReferenceTemperature = Reference,
            HotPixelCurve = [.. Enumerable.Range(0, 24).Select(i => Count(0.012 * Math.Pow(1.35, i)))],
            RateQuantiles =
            [
                .. new[] { 0.5, 0.9, 0.99, 0.999, 0.9999 }.Select(
                    (share, i) =>
                        new RateQuantile(
                            share,
                            new Measurement(
                                0.0061 * Math.Pow(3.1, i),
                                0.0001 * Math.Pow(3.1, i),
                                "e-/px/s",
                                9_048_064,
                                "quantile of the rate map"
                            )
                        )
                ),
            ],
            DoublingByRate =
            [
                .. Enumerable
                    .Range(0, 7)
                    .Select(i => new DoublingByRate(
                        0.01 * Math.Pow(3, i),
                        0.03 * Math.Pow(3, i),
                        new Measurement(
                            6.1 + 0.16 * i + 0.03 * Scatter(i),
                            0.02 + 0.01 * i,
                            "°C",
                            1000,
                            "median of the class"
                        ),
                        0.5 + 0.06 * i,
                        (long)(2e6 / Math.Pow(5, i))
                    )),
            ],
            Defects = new DefectCounts
            {
                Hot = 4123,
                Warm = 21877,
                Cold = 12,
                Dead = 3,
                Saturated = 88,
                NonLinear = 412,
                Flickering = 1704,
                Columns = 1,
                Rows = 0,
                Clusters = 26,
            },
            Thresholds = new DefectThresholds { HotRate = 0.5, WarmRate = 0.1 },
            Glow =
            [
                new GlowRegion
                {
                    Where = "right edge, lower half",
                    X = 3001,
                    Y = 944,
                    Peak = new Measurement(0.114, 0.004, "e-/px/s", 20, ""),
                    AreaThreshold = 0.01,
                    AreaShare = 0.034,
                    Total = new Measurement(8123, 240, "e-/s", 20, ""),
                    ExposureExponent = new Measurement(1.004, 0.011, "1", 5, ""),
                    DoublingTemperature = new Measurement(21.4, 2.2, "°C", 7, ""),
                },
                new GlowRegion
                {
                    Where = "upper left corner",
                    X = 14,
                    Y = 2990,
                    Peak = new Measurement(0.031, 0.002, "e-/px/s", 20, ""),
                    AreaThreshold = 0.01,
                    AreaShare = 0.004,
                },
            ],
            RowNoise = new Measurement(0.112, 0.009, "e-", 40, "variance of row means (EMVA 1288)"),
            ColumnNoise = new Measurement(0.041, 0.011, "e-", 40, "variance of column means (EMVA 1288)"),
            BiasStability = new Measurement(0.62, 0.07, "ADU", 40, "scatter of bias levels"),
        };

    private static HotPixelCount Count(double threshold)
    {
        double count = Math.Round(26000 * Math.Pow(threshold / 0.1, -1.15));
        double half = 1.96 * Math.Sqrt(count);
        return new HotPixelCount(threshold, (long)count, Math.Max(0, count - half), count + half + 2);
    }
}
