using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Decisions;

/// <summary>
/// The invented Tarn-9M as a profile, built from its true values: pixels are lognormal around the median, with a
/// power-law tail of hot pixels.
/// </summary>
internal sealed record Tarn
{
    public double ReadNoise { get; init; } = 1.5;
    public double Gain { get; init; } = 0.8;
    public double Rate { get; init; } = 0.006; // e-/px/s at −10 °C
    public double Doubling { get; init; } = 6;
    public double LogSpread { get; init; } = 0.15; // standard deviation of ln rate over the typical pixels
    public double HotShare { get; init; } = 0.012; // of the pixels
    public double HotFrom { get; init; } = 0.03; // slowest hot pixel, e-/px/s
    public double HotPower { get; init; } = 1.5; // share above r: HotShare·(r/HotFrom)^−HotPower
    public double HotTo { get; init; } = double.PositiveInfinity; // fastest hot pixel, e-/px/s
    public double HotDoubling { get; init; } = 7;
    public double Relative { get; init; } = 0.02; // standard uncertainty of everything
    public double Correlation { get; init; } // of the errors of rate and doubling temperature
    public double Well { get; init; } = 50000; // e-
    public int Width { get; init; } = 3000;
    public int Height { get; init; } = 3000;
    public bool Distribution { get; init; } = true;
    public IReadOnlyList<GlowRegion> Glow { get; init; } = [];

    public static double Reference => -10;

    /// <summary>True rate of the pixel at a rank, e-/px/s at −10 °C.</summary>
    public double RateAt(double share)
    {
        double fromTop = 1 - share;
        return fromTop < HotShare
            ? Math.Min(HotFrom * Math.Pow(fromTop / HotShare, -1 / HotPower), HotTo)
            : Rate
                * Math.Exp(
                    LogSpread
                        * MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Math.Min(share / (1 - HotShare), 1 - 1e-9))
                );
    }

    /// <summary>True dark electrons of the pixel at a rank in one light and in one dark.</summary>
    public (double Light, double Dark) Electrons(double rank, StackConditions stack, DarkFrames darks)
    {
        double rate = RateAt(rank),
            doubling = rank > 1 - HotShare ? HotDoubling : Doubling;
        return (
            rate * Math.Pow(2, (stack.TemperatureCelsius - Reference) / doubling) * stack.ExposureSeconds,
            rate * Math.Pow(2, (darks.TemperatureCelsius - Reference) / doubling) * darks.ExposureSeconds
        );
    }

    public Measurement Of(double value, string unit) => new(value, Math.Abs(value) * Relative, unit, 100, "true value");

    public CameraProfile Profile(params ModeProfile[] more) =>
        new()
        {
            Camera = new CameraInfo
            {
                Name = "Tarn-9M",
                Width = Width,
                Height = Height,
                StoredBits = 16,
            },
            Modes = [Mode(), .. more],
        };

    public ModeProfile Mode() =>
        new()
        {
            Settings = new ModeSettings { Gain = 100, Offset = 30 },
            ReadNoise = Of(ReadNoise, "e-"),
            Gain = Of(Gain, "e-/ADU"),
            FullWell = Of(Well, "e-"),
            DarkCurrent = new DarkCurrentProfile
            {
                Points =
                [
                    .. new[] { -20.0, -15, -10, -5, 0, 5 }.Select(t => new DarkCurrentPoint
                    {
                        Temperature = t,
                        Exposures = [1, 10, 60, 120, 300],
                    }),
                ],
                Models = [Law()],
                Selected = "doubling",
                DoublingTemperature = Of(Doubling, "°C"),
                ReferenceTemperature = Reference,
                RateAtReference = Of(Rate, "e-/px/s"),
                MeasuredRange = [-20, 5],
            },
            FixedPattern = Distribution ? Pattern() : null,
        };

    private DarkCurrentModel Law() =>
        new()
        {
            Name = "doubling",
            Parameters =
            [
                Parameter("rateAtReference", Rate, "e-/px/s"),
                Parameter("doublingTemperature", Doubling, "°C"),
            ],
            Covariance =
            [
                [Square(Rate * Relative), Correlation * Rate * Doubling * Relative * Relative],
                [Correlation * Rate * Doubling * Relative * Relative, Square(Doubling * Relative)],
            ],
        };

    private FixedPatternProfile Pattern() =>
        new()
        {
            ReferenceTemperature = Reference,
            RateQuantiles =
            [
                .. new[] { 0.5, 0.9, 0.99, 0.999, 0.9999 }.Select(s => new RateQuantile(s, Of(RateAt(s), "e-/px/s"))),
            ],
            HotPixelCurve =
            [
                .. Enumerable
                    .Range(-8, 40)
                    .Select(i => HotFrom * Math.Pow(10, i / 10.0))
                    .Append(0.999 * HotTo)
                    .Where(r => r < HotTo)
                    .Order()
                    .Select(Count),
            ],
            DoublingByRate = [new DoublingByRate(HotFrom, 100, Of(HotDoubling, "°C"), 0, 1000)],
            Thresholds = new DefectThresholds { HotRate = 0.8 * HotFrom - Rate },
            Glow = Glow,
        };

    private HotPixelCount Count(double threshold)
    {
        double typical =
            LogSpread > 0 ? 1 - MathNet.Numerics.Distributions.Normal.CDF(0, 1, Math.Log(threshold / Rate) / LogSpread)
            : threshold < Rate ? 1
            : 0;
        double expected =
            (HotShare * Math.Min(Math.Pow(threshold / HotFrom, -HotPower), 1) + (1 - HotShare) * typical)
            * Width
            * Height;
        return new HotPixelCount(threshold, (long)Math.Round(expected), expected * 0.99, expected * 1.01);
    }

    private ModelParameter Parameter(string name, double value, string unit) =>
        new(name, value, value * Relative, unit, 6, "true value");

    private static double Square(double x) => x * x;
}
