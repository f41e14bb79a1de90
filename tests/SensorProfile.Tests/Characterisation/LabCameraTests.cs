using System.Globalization;
using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Characterisation;

/// <summary>
/// Two real cameras. The intervals are the accept intervals of the data's own expected.json: what an independent, sound
/// method should find.
/// </summary>
public sealed class LabCameraTests(ITestOutputHelper output)
{
    [DataFact("lab-12bit", "lab-14bit")]
    public void TheFourteenBitCameraIsMeasuredInsideEveryAcceptInterval()
    {
        CameraProfile profile = Characterise("lab-14bit");
        ModeProfile mode = Assert.Single(profile.Modes);
        Within(mode.ReadNoiseAdu, 9.2295, 9.8004);
        Within(mode.ReadNoise, 2.126, 2.3498);
        Within(mode.Gain, 0.22814, 0.24226);
        Within(mode.Channels.Single(c => c.Name == "R").Gain, 0.22837, 0.2425);
        Within(mode.Channels.Single(c => c.Name == "G1").Gain, 0.22809, 0.2422);
        Within(mode.Channels.Single(c => c.Name == "G2").Gain, 0.22847, 0.24261);
        Within(mode.Channels.Single(c => c.Name == "B").Gain, 0.2276, 0.24168);
        Assert.Equal(9.2952, mode.NoiseDistribution!.Median, 2e-4);
        Assert.Equal(9.6925, mode.NoiseDistribution.Rms, 2e-4);
        Assert.Equal(14.406, mode.NoiseDistribution.Percentile99, 2e-3);
        Assert.Equal(4, profile.Camera.CodeStep);

        DarkCurrentProfile dark = mode.DarkCurrent!;
        Assert.Equal(DarkForm.Variance, dark.Form);
        DarkCurrentPoint point = dark.Points.Single(p => p.Exposures.Contains(100));
        // the level falls with exposure: the camera pins it
        Assert.Null(point.TypicalRate);
        Within(point.RateFromVariance, 0.14198, 0.18071);
        Assert.Contains(profile.Findings, f => f.Code == "black-level-pinned");
        Assert.Equal(
            ["truncated/flat_truncated_01.fits", "truncated/flat_truncated_07.fits"],
            profile.Frames.Rejected.Select(r => r.File)
        );
    }

    [DataFact("lab-12bit", "lab-14bit")]
    public void TheTwelveBitCameraIsMeasuredInsideEveryAcceptInterval()
    {
        CameraProfile profile = Characterise("lab-12bit");
        ModeProfile mode = Assert.Single(profile.Modes);
        Within(mode.ReadNoiseAdu, 26.87, 28.532);
        Within(mode.ReadNoise, 6.3426, 7.0103);
        // red and blue are scaled digitally: no gain of the whole camera
        Assert.Null(mode.Gain);
        Within(mode.Channels.Single(c => c.Name == "G1").Gain, 0.21729, 0.23073);
        Within(mode.Channels.Single(c => c.Name == "R").Gain, 0.24274, 0.25776);
        Within(mode.Channels.Single(c => c.Name == "B").Gain, 0.24255, 0.25756);
        Within(mode.Channels.Single(c => c.Name == "G2").Gain, 0.21725, 0.23069);
        Within(mode.Channels.Single(c => c.Name == "G1").DarkRateFromVariance, 1.8641, 2.522);
        Within(mode.Channels.Single(c => c.Name == "R").DarkRateFromVariance, 1.7603, 2.3816);
        Within(mode.Channels.Single(c => c.Name == "B").DarkRateFromVariance, 1.8555, 2.5104);
        Within(mode.Channels.Single(c => c.Name == "G2").DarkRateFromVariance, 1.9752, 2.6724);
        DarkCurrentPoint point = Assert.Single(mode.DarkCurrent!.Points);
        // the slopes of expected.json are in ADU/s, averaged over the positions
        double gain = mode.Channels.Average(c => c.Gain!.Value);
        Within(point.TypicalRate, 7.3706 * gain, 7.8265 * gain);
        Within(point.MeanRate, 9.9175 * gain, 10.531 * gain);
        string[] codes = [.. profile.Findings.Select(f => f.Code)];
        Assert.Contains("digital-scaling", codes);
        Assert.Contains("row-flicker", codes);
        Assert.Contains("channels-differ", codes);
        Assert.Equal(["torn/dark_050s_01.fits", "torn/dark_050s_03.fits"], profile.Frames.Rejected.Select(r => r.File));
        // row 142 counted from 0
        Assert.All(profile.Frames.Rejected, r =>
            Assert.Contains("from row 143 on", r.Reason, StringComparison.Ordinal)
        );
    }

    /// <summary>The means of the 15 bias frames in expected.json scatter by 0.117 ADU (deviation of this: 19 %); their
    /// medians by 0.119, for a median is 1.25 times as noisy as a mean.
    /// Among the darks the level steps by some 3 ADU from frame to frame and from set to set, and falls with
    /// exposure.</summary>
    [DataFact("lab-12bit", "lab-14bit")]
    public void TheFourteenBitCamerasBlackLevelIsLessSteadyInDarksThanInBias()
    {
        CameraProfile profile = Characterise("lab-14bit");
        BlackLevelProfile level = profile.Modes[0].FixedPattern!.BlackLevel!;
        foreach (BlackLevelPoint p in level.Points)
            output.WriteLine(
                FormattableString.Invariant(
                    $"{p.Hours:F3} h {p.Temperature:F1} °C {p.Exposure} s {p.Level} ± {p.Uncertainty}, expected {p.Expected}"
                )
            );
        double[] bias = [.. level.Points.Where(p => p.Exposure == 0).Select(p => p.Level)];
        Assert.Equal(15, bias.Length);
        // 3 deviations
        Assert.InRange(Math.Sqrt(bias.Sum(b => Math.Pow(b - bias.Average(), 2)) / 14), 0.119 * 0.43, 0.119 * 1.57);
        Assert.InRange(level.Jitter!.Value, 0.4, 1.4);
        Assert.True(level.SetScatter!.Value > level.Jitter.Value);
        Assert.Contains(profile.Findings, f => f.Code == "black-level-sets-differ");
        // Time, temperature and exposure all ran one way here: the rise at the main temperature cannot be told from
        // them.
        Assert.Null(level.Limits.Single(l => l.LongestExposure == 100).Smallest);
        Assert.Contains(level.CannotTell, c => c.StartsWith("Rise with exposure", StringComparison.Ordinal));
    }

    internal static CameraProfile Characterise(string camera)
    {
        string folder = TestData.Path(camera);
        Inventory inventory = FrameInventory.Read([folder], new InventoryOptions { Table = Table(folder) });
        return Characteriser.Run(inventory, new CharacterisationOptions()).Profile;
    }

    /// <summary>What the manifest of a camera says of its frames.</summary>
    internal static CaptureTable Table(string folder, string extension = ".fits")
    {
        string file = Path.Combine(Path.GetTempPath(), $"sensorprofile-{Guid.NewGuid():N}.csv");
        string[] lines = File.ReadAllLines(Path.Combine(folder, "manifest.csv"));
        string[] header = lines[0].Split(',');
        int name = Array.IndexOf(header, "file"),
            group = Array.IndexOf(header, "group"),
            exposure = Array.IndexOf(header, "exposure_s"),
            temperature = Array.IndexOf(header, "ccd_temp_c");
        var table = new List<string> { "file,kind,exposure_s,temperature_c" };
        foreach (string line in lines.Skip(1))
        {
            // The one quoted cell, exptime_card, comes after the columns that are needed up to exposure_s; the
            // temperature is the cell after it.
            string[] cells = line.Split('"') is [var before, var quoted, var after]
                ? [.. before.TrimEnd(',').Split(','), quoted, .. after.TrimStart(',').Split(',')]
                : line.Split(',');
            string kind =
                cells[group].StartsWith("bias", StringComparison.Ordinal) ? "bias"
                : cells[group].Contains("flat", StringComparison.Ordinal) ? "flat"
                : "dark";
            table.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Path.ChangeExtension(cells[name], extension)},{kind},{cells[exposure]},{cells[temperature]}"
                )
            );
        }
        File.WriteAllLines(file, table);
        try
        {
            return CaptureTable.Read(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static void Within(Measurement? measured, double low, double high)
    {
        Assert.NotNull(measured);
        Assert.InRange(measured.Value, low, high);
    }
}
