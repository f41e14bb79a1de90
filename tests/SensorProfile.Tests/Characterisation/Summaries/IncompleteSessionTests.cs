using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Session;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Tests.Characterisation.Summaries;

public sealed class IncompleteSessionTests
{
    private static readonly CameraDescription camera = new()
    {
        Name = "Tarn-9M",
        Width = 80,
        Height = 64,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.1, DoublingTemperature = 6 },
    };

    [Fact]
    public void DarksAloneGiveNullsAndSayWhatIsMissing()
    {
        using var session = new SimulatedSession(
            camera with
            {
                Shots =
                [
                    new()
                    {
                        Kind = FrameKind.Dark,
                        Exposure = 60,
                        Count = 4,
                    },
                    new()
                    {
                        Kind = FrameKind.Dark,
                        Exposure = 120,
                        Count = 4,
                    },
                ],
            },
            1
        );
        CameraProfile profile = session.Characterise().Profile;
        ModeProfile mode = Assert.Single(profile.Modes);
        Assert.Null(mode.ReadNoise);
        Assert.Null(mode.Gain);
        Assert.Null(mode.DarkCurrent);
        string[] codes = [.. profile.Findings.Where(f => f.Severity == Severity.Refusal).Select(f => f.Code)];
        Assert.Contains("lacks-read-noise", codes);
        Assert.Contains("lacks-gain", codes);
        Assert.Contains("gain-missing-for-electrons", codes);
        Assert.Equal(8, profile.Frames.Used);
    }

    [Fact]
    public void OneBadFileAmongManyIsNamedAndTheRestMeasured()
    {
        using var session = new SimulatedSession(camera with { Shots = Nights.Full(40000, [-10], [60, 120, 300]) }, 2);
        string whole = Directory.GetFiles(session.Folder, "bias*").Order(StringComparer.Ordinal).First();
        byte[] bytes = File.ReadAllBytes(whole);
        File.WriteAllBytes(Path.Combine(session.Folder, "cut short.fits"), bytes[..(bytes.Length / 2)]);
        CameraProfile profile = session.Characterise().Profile;
        RejectedFile rejected = Assert.Single(profile.Frames.Rejected);
        Assert.Equal("cut short.fits", rejected.File);
        Assert.Contains("bytes are missing", rejected.Reason, StringComparison.Ordinal);
        Assert.NotNull(profile.Modes[0].Gain);
        Assert.NotNull(profile.Modes[0].ReadNoise);
    }

    // Darks without any noise ended the whole run once: their level had no uncertainty.
    [Fact]
    public void DarksThatAreFullAreNamedAndTheOthersMeasured()
    {
        using var session = new SimulatedSession(
            camera with
            {
                DarkCurrent = new()
                {
                    RateAtReference = 20,
                    ReferenceTemperature = -10,
                    DoublingTemperature = 6,
                },
                Shots = Nights.Full(40000, [-25, -20, -15, -10, 20], [10, 60, 300]),
            },
            6
        );
        CameraProfile profile = session.Characterise().Profile;
        Finding full = Assert.Single(profile.Findings, f => f.Code == "dark-saturated");
        // at 20 °C 640 e-/px/s: 60 s and 300 s fill a well of 40 000 e-, 10 s do not
        Assert.Equal(8, full.Frames.Count);
        Assert.NotNull(profile.Modes[0].DarkCurrent!.DoublingTemperature);
        Assert.Equal(6, profile.Modes[0].DarkCurrent!.DoublingTemperature!.Value, 0.3);
    }

    [Fact]
    public void FramesOfASingleRowAreMeasuredWithoutMaps()
    {
        using var session = new SimulatedSession(
            camera with
            {
                Width = 400,
                Height = 1,
                Shots = Nights.Full(40000, [-10], [60, 120, 300]),
            },
            7
        );
        CharacterisationResult result = Characteriser.Run(
            FrameInventory.Read([session.Folder], new InventoryOptions()),
            new CharacterisationOptions()
        );
        Assert.Contains(result.Profile.Findings, f => f.Code == "no-picture");
        Assert.NotNull(result.Profile.Modes[0].ReadNoise);
        Assert.Empty(result.Profile.Modes[0].FixedPattern?.HotPixelCurve ?? []);
    }

    [Fact]
    public void AFrameWhosePixelsWereChangedIsLeftOutByItsChecksum()
    {
        using var session = new SimulatedSession(camera with { Shots = Nights.Full(40000, [-10], [60, 120, 300]) }, 5);
        string[] bias = [.. Directory.GetFiles(session.Folder, "bias*").Order(StringComparer.Ordinal).Take(2)];
        ChangeByte(bias[0], ^3000); // a pixel: the frames of this size end with some padding
        EditHeader(bias[1]);
        CameraProfile profile = session.Characterise().Profile;
        RejectedFile rejected = Assert.Single(profile.Frames.Rejected);
        Assert.Equal(Path.GetFileName(bias[0]), rejected.File);
        Assert.Matches(
            "^Damaged or changed: DATASUM says [0-9]+, the data add up to [0-9]+: they were damaged or changed "
                + "after the sum was written\\.$",
            rejected.Reason
        );
        Assert.Contains(profile.Findings, f => f.Code == "damaged-frame" && f.Frames.Single() == rejected.File);
    }

    private static void ChangeByte(string path, Index at)
    {
        byte[] bytes = File.ReadAllBytes(path);
        bytes[at] ^= 1;
        File.WriteAllBytes(path, bytes);
    }

    // A name corrected by hand: CHECKSUM no longer fits, but no pixel was touched.
    private static void EditHeader(string path)
    {
        byte[] bytes = File.ReadAllBytes(path);
        int name = System.Text.Encoding.ASCII.GetString(bytes).IndexOf("CREATOR", StringComparison.Ordinal);
        bytes[name + 12] = (byte)'X';
        File.WriteAllBytes(path, bytes);
    }

    [Fact]
    public void ADarkWithLightIsFoundOut()
    {
        using var session = new SimulatedSession(
            camera with
            {
                Shots =
                [
                    .. Nights.Full(40000, [-10], [60, 120, 300]),
                    new()
                    {
                        Kind = FrameKind.Dark,
                        Exposure = 300,
                        Count = 1,
                        LightLeak = 3,
                        Pause = 1,
                    },
                ],
            },
            3
        );
        CameraProfile profile = session.Characterise().Profile;
        RejectedFile rejected = Assert.Single(profile.Frames.Rejected);
        Assert.Contains("is far from the", rejected.Reason, StringComparison.Ordinal);
        Assert.Contains(profile.Findings, f => f.Code == "level-outlier" && f.Frames.Contains(rejected.File));
    }

    [Fact]
    public void TheProfileDoesNotDependOnTheNumberOfThreads()
    {
        using var session = new SimulatedSession(
            camera with
            {
                Shots = Nights.Full(40000, [-10, 0, 5], [60, 120, 300], darks: 3, bias: 9),
            },
            4
        );
        string File(int threads)
        {
            string path = Path.Combine(session.Folder, $"profile-{threads}.json");
            ProfileFile.Write(path, session.Characterise(threads).Profile);
            return System.IO.File.ReadAllText(path);
        }
        string one = File(1);
        Assert.Equal(one, File(3));
        Assert.Equal(one, File(8));
    }
}
