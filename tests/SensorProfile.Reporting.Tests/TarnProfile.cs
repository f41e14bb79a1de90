using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Response;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Tests;

/// <summary>
/// A profile of the invented Tarn-9M as a characterisation might give it: plausible numbers with plausible scatter,
/// always the same.
/// </summary>
internal static partial class TarnProfile
{
    private const double GainElectrons = 0.8012;
    private const double Reference = -10;

    private static readonly double[] _temperatures = [-20, -15, -10, -5, 0, 5, 10];
    private static readonly double[] _exposures = [10, 60, 180, 300, 600];
    private static readonly DateTimeOffset _start = new(2025, 10, 12, 20, 15, 0, TimeSpan.Zero);

    public static CameraProfile Build() =>
        new()
        {
            CreatedUtc = new DateTimeOffset(2025, 10, 13, 1, 42, 7, TimeSpan.Zero),
            Software = new SoftwareInfo("sensorprofile", "0.1.0"),
            Camera = new CameraInfo
            {
                Name = "Tarn-9M",
                Width = 3008,
                Height = 3008,
                StoredBits = 16,
                CodeStep = 4,
            },
            Modes = [Mode()],
            Findings =
            [
                new Finding(
                    "pedestal-drift",
                    Severity.Warning,
                    "The black level moved by 1.8 ADU during the night, more than the dark signal of the shortest "
                        + "exposures at -20 °C; those were weighted down. Take bias frames between the darks to follow it.",
                    [
                        "bias_0001.fits",
                        "bias_0040.fits",
                        "dark_-20_10s_03.fits",
                        "dark_-20_10s_04.fits",
                        "dark_-20_10s_05.fits",
                    ]
                ),
                new Finding(
                    "codes-shifted",
                    Severity.Note,
                    "The camera shifts its codes to the left: only every fourth ADU is used, so the converter has 14 "
                        + "bits."
                ),
            ],
            Frames = new FramesInfo
            {
                Used = 322,
                Rejected =
                [
                    new RejectedFile("flats/flat_0007.fits", "The file ends in the middle of its pixels."),
                    new RejectedFile(
                        "darks/dark_0_600s_02.fits",
                        "From row 1204 on it holds the signal of another exposure: a torn frame."
                    ),
                ],
                InputDigest = "5f2b7c0d9e4a1836c2d7e0b94f6a8d13b5c07e92a4d61f83c9e25b70d8a4f136",
                Session = [.. Session()],
            },
        };

    public static ModeProfile Mode() =>
        new()
        {
            Settings = new ModeSettings { Gain = 100, Offset = 30 },
            BiasLevel = new Measurement(500.62, 0.11, "ADU", 40, "mean of bias frames"),
            ReadNoise = new Measurement(1.5234, 0.0041, "e-", 20, "bias pairs, quantisation removed (EMVA 1288)"),
            ReadNoiseAdu = new Measurement(1.9014, 0.0047, "ADU", 20, "bias pairs, quantisation removed (EMVA 1288)"),
            Gain = new Measurement(
                GainElectrons,
                0.0009,
                "e-/ADU",
                14,
                "photon transfer, curved fit (EMVA 1288; Astier et al. 2019)"
            ),
            FullWell = new Measurement(50790, 210, "e-", 14, "saturation level over gain (EMVA 1288)"),
            SaturationLevel = new Measurement(63390, 230, "ADU", 14, "peak of the variance (EMVA 1288)"),
            DynamicRange = new Measurement(15.025, 0.0071, "stops", 14, "full well over read noise"),
            LinearityError = new Measurement(0.38, 0.05, "%", 12, "mean absolute deviation, 5 % to 95 % (EMVA 1288)"),
            ResponseNonuniformity = new Measurement(
                0.641,
                0.008,
                "%",
                16,
                "spatial variance of mean flats (EMVA 1288)"
            ),
            DarkCurrent = Dark(),
            FixedPattern = Pattern(),
            PhotonTransfer = new PhotonTransferProfile { Curves = [Curve("all", GainElectrons)] },
            NoiseDistribution = Noise(),
        };

    /// <summary>The older uncooled colour camera: four channels, a pinned black level, few temperatures.</summary>
    public static CameraProfile Fell()
    {
        (string Name, double Gain)[] channels = [("R", 2.31), ("G1", 2.29), ("G2", 2.30), ("B", 2.33)];
        DarkCurrentProfile dark = Dark();
        ModeProfile mode = Mode() with
        {
            Settings = new ModeSettings { Iso = 800 },
            FixedPattern = null,
            NoiseDistribution = null,
            DarkCurrent = dark with
            {
                Form = DarkForm.Variance,
                Selected = null,
                Models = [],
                RateAtReference = null,
                DoublingTemperature = null,
                Points =
                [
                    .. dark
                        .Points.TakeLast(2)
                        .Select(p => p with { TypicalRate = null, MeanRate = null, UpperLimit = 0.02 }),
                ],
            },
            PhotonTransfer = new PhotonTransferProfile
            {
                Curves =
                [
                    .. channels.Select(c =>
                        Curve(c.Name, c.Gain) with
                        {
                            Selected = GainForm.Straight,
                            Curvature = null,
                            GainCurved = null,
                        }
                    ),
                ],
            },
            Channels =
            [
                .. channels.Select(c => new ChannelProfile
                {
                    Name = c.Name,
                    Gain = new Measurement(c.Gain, 0.01, "e-/ADU", 14, "photon transfer"),
                    ReadNoise = new Measurement(3.1, 0.02, "e-", 14, "bias pairs"),
                    LinearityError = new Measurement(0.4, 0.05, "%", 12, ""),
                }),
            ],
        };
        return Build() with
        {
            Camera = new CameraInfo
            {
                Name = "Fell-24C",
                Width = 6000,
                Height = 4000,
                ColourFilter = "RGGB",
                StoredBits = 14,
            },
            Modes =
            [
                mode,
                mode with
                {
                    Settings = new ModeSettings { Iso = 1600 },
                    PhotonTransfer = null,
                    Gain = null,
                    ReadNoise = null,
                    FullWell = null,
                    DynamicRange = null,
                    Channels = [],
                },
            ],
            Findings =
            [
                new Finding(
                    "flats-missing",
                    Severity.Refusal,
                    "There are no flats at ISO 1600, so the gain cannot be measured there; take ten pairs from "
                        + "dim to saturated, about 15 minutes."
                ),
                new Finding(
                    "temperatures-few",
                    Severity.Refusal,
                    "Darks were taken at two temperatures only, too few to tell how the dark current doubles; add "
                        + "darks on a night that is at least 5 °C colder."
                ),
                new Finding(
                    "black-level-pinned",
                    Severity.Warning,
                    "The camera pins its black level, so dark current was taken from the noise instead."
                ),
            ],
        };
    }

    /// <summary>Scatter between −1.7 and 1.7 with a standard deviation of one: a fixed sequence, uniform.</summary>
    public static double Scatter(int index) => (Fraction(index * 0.6180339887498949 + 0.31) - 0.5) * Math.Sqrt(12);

    private static double Fraction(double value) => value - Math.Floor(value);

    private static double Rate(double temperature) => 0.0061 * Math.Pow(2, (temperature - Reference) / 6.13);

    private static DarkCurrentProfile Dark()
    {
        var points = _temperatures
            .Select(
                (temperature, i) =>
                {
                    double rate = Rate(temperature),
                        uncertainty = 0.00007 + 0.011 * rate;
                    return new DarkCurrentPoint
                    {
                        Temperature = temperature + 0.03 * Scatter(i),
                        TypicalRate = new Measurement(
                            rate + uncertainty * Scatter(i + 50),
                            uncertainty,
                            "e-/px/s",
                            5,
                            "slope of the median level"
                        ),
                        MeanRate = new Measurement(
                            1.34 * rate + uncertainty * Scatter(i + 70),
                            uncertainty,
                            "e-/px/s",
                            5,
                            "slope of the mean level"
                        ),
                        RateFromVariance = new Measurement(
                            rate * 1.02 + 3 * uncertainty * Scatter(i + 90),
                            3 * uncertainty,
                            "e-/px/s",
                            5,
                            "growth of the temporal variance"
                        ),
                        Exposures = _exposures,
                        Frames = 20,
                        Linear = true,
                        Levels = [.. _exposures.Select((exposure, j) => Level(rate, exposure, i * 10 + j))],
                    };
                }
            )
            .ToArray();
        TemperatureFitResult fit = TemperatureFit.Fit(
            [
                .. points.Select(p => new TemperaturePoint(
                    p.Temperature,
                    p.TypicalRate!.Value,
                    p.TypicalRate.StandardUncertainty
                )),
            ],
            Reference
        );
        return new DarkCurrentProfile
        {
            Points = points,
            Models = fit.Models,
            Selected = fit.Selected,
            DoublingTemperature = fit.DoublingTemperature,
            RateAtReference = fit.RateAtReference,
            ReferenceTemperature = Reference,
            MeasuredRange = fit.MeasuredRange,
        };
    }

    private static DarkLevel Level(double rate, double exposure, int seed)
    {
        double signal = rate * exposure / GainElectrons,
            uncertainty = 0.09 + 0.006 * signal;
        return new DarkLevel
        {
            Exposure = exposure,
            Frames = 4,
            Median = signal + uncertainty * Scatter(seed),
            MedianUncertainty = uncertainty,
            Mean = 1.34 * signal + uncertainty * Scatter(seed + 7),
            MeanUncertainty = uncertainty,
            Variance = 3.6 + signal / GainElectrons + 0.02 * Scatter(seed + 13),
            VarianceUncertainty = 0.02,
        };
    }

    private static PhotonTransferCurve Curve(string channel, double gain)
    {
        const double Curvature = -1.1e-6;
        double[] signals =
        [
            120,
            260,
            540,
            1100,
            2300,
            4700,
            9000,
            15000,
            22000,
            29000,
            36000,
            43000,
            50000,
            57000,
            62500,
            63300,
        ];
        return new PhotonTransferCurve
        {
            Channel = channel,
            Points =
            [
                .. signals.Select(
                    (signal, i) =>
                        Point(signal, signal / gain * (1 + Curvature * signal) * (signal > 60000 ? 0.55 : 1), i)
                ),
            ],
            Slope = new Measurement(1 / gain * 0.975, 0.0012, "ADU/e-", 11, "weighted line, 0 to 70 %"),
            Intercept = new Measurement(0.8, 1.9, "ADU²", 11, "weighted line, 0 to 70 %"),
            Curvature = new Measurement(Curvature, 7e-8, "1/ADU", 11, "weighted curve, 0 to 70 %"),
            GainStraight = new Measurement(gain / 0.975, 0.0011, "e-/ADU", 11, "weighted line, 0 to 70 %"),
            GainCurved = new Measurement(gain, 0.0009, "e-/ADU", 11, "weighted curve, 0 to 70 %"),
            Selected = GainForm.Curved,
            FitLimit = 44400,
            SaturatedBy = SaturationCause.Pixel,
        };
    }

    private static PhotonTransferPoint Point(double signal, double variance, int index) =>
        new()
        {
            Exposure = signal / 4000,
            Signal = signal,
            SignalUncertainty = 0.0012 * signal,
            Variance = variance * (1 + 0.003 * Scatter(index)),
            VarianceUncertainty = 0.003 * variance,
            InGainFit = signal < 44400,
            InLinearityFit = signal is > 3000 and < 60000,
            LinearityDeviation = signal is > 3000 and < 60000
                ? 0.9 * Math.Sin(signal / 17000) - 0.25 + 0.1 * Scatter(index + 30)
                : null,
            Frames = [$"flat_{2 * index:0000}.fits", $"flat_{2 * index + 1:0000}.fits"],
        };

    private static NoiseDistribution Noise()
    {
        double[] edges = [.. Enumerable.Range(0, 160).Select(i => 0.9 + i * 0.05)];
        return new NoiseDistribution
        {
            Frames = 40,
            Unit = "e-",
            Median = 1.51,
            Mean = 1.55,
            Rms = 1.60,
            Percentile90 = 1.78,
            Percentile99 = 2.61,
            Percentile999 = 4.9,
            BinEdges = edges,
            Counts =
            [
                .. edges.Select(e =>
                    (long)(
                        9_048_064 * 0.12 * Math.Exp(-0.5 * Math.Pow((e - 1.5) / 0.165, 2))
                        + 45_000 * Math.Exp(-Math.Max(0, e - 1.4) / 0.55) * (e > 1.3 ? 1 : 0)
                    )
                ),
            ],
        };
    }

    private static IEnumerable<FrameSummary> Session()
    {
        int minute = 0;
        for (int i = 0; i < 40; i++)
            yield return new FrameSummary(
                $"bias_{i:0000}.fits",
                "bias",
                0,
                -10 + 0.04 * Scatter(i),
                _start.AddMinutes(minute++ * 0.2),
                500.6 + 0.6 * Scatter(i),
                0
            );
        double clock = 10;
        for (int t = 0; t < _temperatures.Length; t++)
        {
            for (int e = 0; e < _exposures.Length; e++)
            {
                for (int n = 0; n < 4; n++)
                {
                    int seed = t * 100 + e * 10 + n;
                    yield return new FrameSummary(
                        $"dark_{_temperatures[t]}_{_exposures[e]}s_{n:00}.fits",
                        "dark",
                        _exposures[e],
                        _temperatures[t] + (n == 0 && e == 0 ? 0.8 : 0) + 0.05 * Scatter(seed),
                        _start.AddMinutes(clock),
                        500.6 + Rate(_temperatures[t]) * _exposures[e] + 0.4 * Scatter(seed),
                        0
                    );
                    clock += _exposures[e] / 60 + 0.1;
                }
            }
            clock += 12;
        }
        for (int i = 0; i < 32; i++)
            yield return new FrameSummary(
                $"flat_{i:0000}.fits",
                "flat",
                0.03 * Math.Pow(1.55, i / 2),
                -10 + 0.03 * Scatter(i),
                _start.AddMinutes(clock += 0.5),
                500 + 120 * Math.Pow(1.55, i / 2),
                0
            );
    }
}
