using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// A stored profile of the Tarn-9M with everything that decisions ask for; its numbers are those of an invented camera.
/// </summary>
internal static class TarnProfile
{
    public static void Write(string path, params ModeProfile[] more) => WriteNamed(path, "Tarn-9M", more);

    /// <summary>The same camera under another name.</summary>
    public static void WriteNamed(string path, string name, params ModeProfile[] more) =>
        ProfileFile.Write(
            path,
            new CameraProfile
            {
                CreatedUtc = new DateTimeOffset(2031, 10, 15, 8, 0, 0, TimeSpan.Zero),
                Software = new SoftwareInfo("sensorprofile", "0.1.0"),
                Camera = new CameraInfo
                {
                    Name = name,
                    Width = 3000,
                    Height = 3000,
                    StoredBits = 16,
                },
                Modes = [Mode(100), .. more],
            }
        );

    public static ModeProfile Mode(double gainSetting) =>
        new()
        {
            Settings = new ModeSettings { Gain = gainSetting, Offset = 30 },
            ReadNoise = Of(1.5, "e-"),
            ReadNoiseAdu = Of(1.875, "ADU"),
            Gain = Of(0.8, "e-/ADU"),
            FullWell = Of(50000, "e-"),
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
                Models =
                [
                    new DarkCurrentModel
                    {
                        Name = "doubling",
                        Parameters =
                        [
                            new ModelParameter("rateAtReference", 0.006, 0.00012, "e-/px/s", 6, "invented"),
                            new ModelParameter("doublingTemperature", 6, 0.12, "°C", 6, "invented"),
                        ],
                        Covariance =
                        [
                            [0.00012 * 0.00012, 0],
                            [0, 0.12 * 0.12],
                        ],
                    },
                ],
                Selected = "doubling",
                DoublingTemperature = Of(6, "°C"),
                ReferenceTemperature = -10,
                RateAtReference = Of(0.006, "e-/px/s"),
                MeasuredRange = [-20, 5],
            },
            FixedPattern = new FixedPatternProfile
            {
                ReferenceTemperature = -10,
                RateQuantiles =
                [
                    .. new[] { (0.5, 0.006), (0.9, 0.0073), (0.99, 0.03), (0.999, 0.14), (0.9999, 0.65) }.Select(
                        q => new RateQuantile(q.Item1, Of(q.Item2, "e-/px/s"))
                    ),
                ],
                HotPixelCurve =
                [
                    .. new[] { (0.03, 90000L), (0.09, 17320L), (0.3, 2846L), (0.9, 548L), (3.0, 90L) }.Select(
                        c => new HotPixelCount(c.Item1, c.Item2, c.Item2 * 0.99, c.Item2 * 1.01)
                    ),
                ],
                DoublingByRate = [new DoublingByRate(0.03, 100, Of(7, "°C"), 0, 1000)],
                Thresholds = new DefectThresholds { HotRate = 0.018 },
            },
        };

    private static Measurement Of(double value, string unit) => new(value, 0.02 * value, unit, 100, "invented");
}
