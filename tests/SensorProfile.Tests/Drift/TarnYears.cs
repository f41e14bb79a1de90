using MathNet.Numerics.Distributions;
using SensorProfile.Drift.Archive;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Drift;

/// <summary>
/// The Tarn-9M as it would be profiled in one October: true values, measured with errors drawn from their stated
/// uncertainties.
/// </summary>
internal sealed record TarnYears
{
    public double ReadNoise { get; init; } = 1.6;
    public double Gain { get; init; } = 0.8;
    public double DarkRate { get; init; } = 0.012;
    public double Doubling { get; init; } = 6.1;
    public double BiasLevel { get; init; } = 600;
    public double FullWell { get; init; } = 48000;
    public double HotPixels { get; init; } = 600;
    public double Glow { get; init; } = 900;
    public int Width { get; init; } = 640;
    public int Height { get; init; } = 480;

    /// <summary>
    /// The profile of a year. The gain's error moves every quantity in electrons together; the bias level and the
    /// temperature wander from night to night.
    /// </summary>
    public ProfileOnDisk Measure(int year, Random random, string? maps = null)
    {
        double Draw() => Normal.Sample(random, 0, 1);
        Measurement Of(double truth, double relative, string unit, double common = 0, double commonError = 0) =>
            new(
                truth * (1 + relative * Draw() + commonError),
                Math.Abs(truth) * double.Hypot(relative, common),
                unit,
                1000,
                "drawn"
            );
        const double gainRelative = 0.004,
            stability = 0.15;
        double gainError = gainRelative * Draw(),
            nightlyRate = Math.Log(2) / Doubling * 0.05 * Draw();
        double bias = BiasLevel + stability * Draw() + 0.02 * Draw();
        Measurement rate = Of(DarkRate, 0.01, "e-/px/s", gainRelative, gainError + nightlyRate),
            doubling = Of(Doubling, 0.008, "°C");
        var mode = new ModeProfile
        {
            Settings = new ModeSettings { Gain = 100, Offset = 30 },
            BiasLevel = new Measurement(bias, 0.02, "ADU", 16, "drawn"),
            Gain = new Measurement(Gain * (1 + gainError), Gain * gainRelative, "e-/ADU", 1000, "drawn"),
            ReadNoise = Of(ReadNoise, 0.003, "e-", gainRelative, gainError),
            ReadNoiseAdu = Of(ReadNoise / Gain, 0.003, "ADU"),
            FullWell = Of(FullWell, 0.004, "e-", gainRelative, gainError),
            SaturationLevel = Of(FullWell / Gain + BiasLevel, 0.002, "ADU"),
            LinearityError = Of(0.3, 0.1, "%"),
            ResponseNonuniformity = Of(0.6, 0.02, "%"),
            DarkCurrent = Dark(rate, doubling),
            FixedPattern = Pattern(random, Of, stability),
        };
        return new ProfileOnDisk(
            $"{year}/profile.json",
            new CameraProfile
            {
                CreatedUtc = new DateTimeOffset(year, 10, 15, 12, 0, 0, TimeSpan.Zero),
                Software = new("sensorprofile", "1.0.0"),
                Camera = new CameraInfo
                {
                    Name = "Tarn-9M",
                    Width = Width,
                    Height = Height,
                    StoredBits = 16,
                },
                Modes = [mode],
                Frames = new FramesInfo
                {
                    Used = 120,
                    Session =
                    [
                        new FrameSummary(
                            "bias_001.fits",
                            "bias",
                            0,
                            -10,
                            new DateTimeOffset(year, 10, 14, 18, 30, 0, TimeSpan.Zero),
                            600,
                            0
                        ),
                    ],
                },
            },
            maps
        );
    }

    private static DarkCurrentProfile Dark(Measurement rate, Measurement doubling) =>
        new()
        {
            Points =
            [
                .. new[] { -20.0, -10, 0, 5 }.Select(t => new DarkCurrentPoint
                {
                    Temperature = t,
                    Exposures = [10, 60, 300],
                }),
            ],
            Models =
            [
                new DarkCurrentModel
                {
                    Name = "doubling",
                    Weight = 1,
                    Parameters = [Parameter("rateAtReference", rate), Parameter("doublingTemperature", doubling)],
                    Covariance =
                    [
                        [Math.Pow(rate.StandardUncertainty, 2), 0],
                        [0, Math.Pow(doubling.StandardUncertainty, 2)],
                    ],
                },
            ],
            Selected = "doubling",
            DoublingTemperature = doubling,
            ReferenceTemperature = -10,
            RateAtReference = rate,
            MeasuredRange = [-20, 5],
        };

    private FixedPatternProfile Pattern(
        Random random,
        Func<double, double, string, double, double, Measurement> of,
        double stability
    )
    {
        double[] thresholds = [0.05, 0.1, 0.3, 1, 3, 10];
        return new FixedPatternProfile
        {
            ReferenceTemperature = -10,
            Thresholds = new DefectThresholds { HotRate = 0.05, WarmRate = 0.02 },
            HotPixelCurve =
            [
                .. thresholds.Select(t => new HotPixelCount(
                    t,
                    Poisson.Sample(random, HotPixels * Math.Log(20 / t) / Math.Log(20 / 0.05)),
                    0,
                    0
                )),
            ],
            DoublingByRate = [new DoublingByRate(0.02, 100, new Measurement(6.6, 0.05, "°C", 500, "drawn"), 0.5, 500)],
            RateQuantiles =
            [
                .. new[] { 0.5, 0.9, 0.99, 0.999 }.Zip([1.0, 1.4, 3, 60], (s, f) =>
                    new RateQuantile(s, new Measurement(f * DarkRate, 0.01 * f * DarkRate, "e-/px/s", 1000, "drawn"))
                ),
            ],
            Glow =
            [
                new GlowRegion
                {
                    Where = "right edge",
                    Total = of(Glow, 0.03, "e-/s", 0, 0),
                    Peak = of(0.03, 0.03, "e-/px/s", 0, 0),
                    DoublingTemperature = new Measurement(10, 0.5, "°C", 4, "drawn"),
                },
            ],
            RowNoise = of(0.15, 0.05, "e-", 0, 0),
            ColumnNoise = of(0.05, 0.1, "e-", 0, 0),
            BiasStability = new Measurement(stability, 0.03, "ADU", 16, "drawn"),
        };
    }

    private static ModelParameter Parameter(string name, Measurement m) =>
        new(name, m.Value, m.StandardUncertainty, m.Unit, 4, "drawn");
}
