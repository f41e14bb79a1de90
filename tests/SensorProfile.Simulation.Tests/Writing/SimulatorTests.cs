using System.Text.Json;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Tests.Writing;

public sealed class SimulatorTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sensorprofile-simulation-").FullName;

    private static readonly CameraDescription Camera = new()
    {
        Name = "Fell-24C",
        Width = 32,
        Height = 20,
        ColourFilter = "RGGB",
        Gain = 0.5,
        ReadNoise = 3,
        FullWell = 20000,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.2, DoublingTemperature = 6 },
        HotPixels = new HotPixels { Share = 0.05 },
        TelegraphPixels = new TelegraphPixels { Share = 0.02, Amplitude = 20 },
        Settings = new HeaderSettings
        {
            Gain = 120,
            Offset = 30,
            Readout = "slow",
        },
        Shots =
        [
            new Shot { Kind = FrameKind.Bias, Count = 2 },
            new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = 300,
                Temperature = -20,
                Count = 2,
            },
            new Shot
            {
                Kind = FrameKind.Flat,
                Exposure = 1.5,
                Level = 5000,
            },
        ],
    };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void FramesAreWrittenUnderTheirNamesWithTheirPixels()
    {
        Simulator.Write(Camera, _folder, 3);
        var night = new SimulatedNight(Camera, 3);
        Assert.Equal(
            [
                "bias_-10C_001.fits",
                "bias_-10C_002.fits",
                "dark_-20C_300s_001.fits",
                "dark_-20C_300s_002.fits",
                "flat_-10C_1.5s_001.fits",
            ],
            Directory.GetFiles(_folder, "*.fits").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)
        );
        foreach (SimulatedFrame frame in night.Frames)
        {
            using FitsFile file = FitsFile.Open(Path.Combine(_folder, frame.FileName));
            ushort[] pixels = new ushort[32 * 20];
            file.FirstImage!.ReadRows(0, pixels.AsSpan());
            Assert.Equal(night.Render(frame), pixels);
        }
    }

    [Fact]
    public void HeadersSayWhatAFrameIs()
    {
        Simulator.Write(Camera, _folder, 3);
        using FitsFile file = FitsFile.Open(Path.Combine(_folder, "dark_-20C_300s_001.fits"));
        FitsHeader header = file.FirstImage!.Header;
        Assert.Equal("Dark Frame", header.Text("IMAGETYP"));
        Assert.Equal("Fell-24C", header.Text("INSTRUME"));
        Assert.Equal("RGGB", header.Text("BAYERPAT"));
        Assert.Equal("slow", header.Text("READOUTM"));
        Assert.Equal(300, header.Number("EXPTIME"));
        Assert.Equal(-20, header.Number("CCD-TEMP"));
        Assert.Equal(-20, header.Number("SET-TEMP"));
        Assert.Equal(120, header.Number("GAIN"));
        Assert.Equal(30, header.Number("OFFSET"));
        Assert.Equal(1, header.Integer("XBINNING"));
        // The third frame: two biases of 2.5 s read-out, a pause of 60 s and 10 °C at 40 s each after 19:00.
        Assert.Equal("2031-10-14T19:07:45.000", header.Text("DATE-OBS"));
        Assert.Empty(file.Warnings);
    }

    [Fact]
    public void TwoRunsGiveTheSameBytes()
    {
        string other = Path.Combine(_folder, "again");
        Simulator.Write(Camera, _folder, 3, new SimulationOptions { Threads = 1 });
        Simulator.Write(Camera, other, 3, new SimulationOptions { Threads = 4 });
        string[] files =
        [
            .. Directory.GetFiles(other, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(other, f)),
        ];
        Assert.Equal(5 + 7 + 1, files.Length);
        Assert.All(files, f =>
            Assert.Equal(File.ReadAllBytes(Path.Combine(other, f)), File.ReadAllBytes(Path.Combine(_folder, f)))
        );
    }

    [Fact]
    public void TruthNamesItsMaps()
    {
        Simulator.Write(Camera, _folder, 3);
        using JsonDocument truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(_folder, "truth.json")));
        Assert.Equal(0.5, truth.RootElement.GetProperty("gain").GetDouble());
        Assert.Equal(6, truth.RootElement.GetProperty("darkCurrent").GetProperty("doublingTemperature").GetDouble());
        foreach (JsonProperty map in truth.RootElement.GetProperty("maps").EnumerateObject())
        {
            using FitsFile file = FitsFile.Open(Path.Combine(_folder, map.Value.GetString()!));
            Assert.Equal([32, 20], file.FirstImage!.Axes);
        }
        Assert.Equal(truth.RootElement.GetProperty("hotPixels").GetArrayLength(), CountHot());

        int CountHot()
        {
            using FitsFile file = FitsFile.Open(Path.Combine(_folder, "truth/defects.truth"));
            int[] classes = new int[640];
            file.FirstImage!.ReadRows(0, classes.AsSpan());
            return classes.Count(c => (c & 1) != 0);
        }
    }

    [Fact]
    public void TruthReadBackIsTheSame()
    {
        SimulationTruth written = Simulator.WriteTelling(Camera, _folder, 3);
        SimulationTruth read = SimulationTruth.Read(Path.Combine(_folder, "truth.json"));
        Assert.Equal(written.HotPixels, read.HotPixels);
        Assert.Equal(written.TelegraphPixels, read.TelegraphPixels);
        Assert.Equal(written.Frames, read.Frames);
        Assert.Equal(written.DarkCurrent!.Points, read.DarkCurrent!.Points);
        Assert.Equal(written.Camera.ToJson(), read.Camera.ToJson());
        Assert.Equal(
            (written.ReadNoiseAdu, written.FullWell, written.Seed),
            (read.ReadNoiseAdu, read.FullWell, read.Seed)
        );
    }

    [Fact]
    public void AnotherFileIsNoTruth()
    {
        string other = Path.Combine(_folder, "other.json");
        File.WriteAllText(other, "{ \"a\": 1 }");
        Assert.StartsWith(
            $"{other} is not the truth of a simulated night",
            Assert.Throws<InvalidDataException>(() => SimulationTruth.Read(other)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AFileOfThatNameIsNotReplacedUnlessAsked()
    {
        Simulator.Write(Camera, _folder, 3);
        var error = Assert.Throws<IOException>(() => Simulator.Write(Camera, _folder, 4));
        Assert.Contains("bias_-10C_001.fits", error.Message, StringComparison.Ordinal);
        Simulator.Write(Camera, _folder, 4, new SimulationOptions { Overwrite = true });
    }

    [Fact]
    public void CancelledNothingHalfWrittenIsLeft()
    {
        using var source = new CancellationTokenSource();
        var afterTwo = new Stop(source);
        Assert.ThrowsAny<OperationCanceledException>(() =>
            Simulator.Write(Camera, _folder, 3, null, afterTwo, source.Token)
        );
        Assert.Equal(
            ["bias_-10C_001.fits", "bias_-10C_002.fits"],
            Directory.GetFiles(_folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void HeaderFaultsAreWrittenAsTheyStand()
    {
        CameraDescription faulty = Camera with
        {
            Faults =
            [
                new Fault
                {
                    Shot = 2,
                    Frame = 1,
                    ReplaceKeywords = new Dictionary<string, string> { ["EXPTIME"] = "'300,0   '" },
                    OmitKeywords = ["CCD-TEMP", "GAIN"],
                },
                new Fault
                {
                    Shot = 2,
                    Frame = 2,
                    CutBytes = 2000,
                },
            ],
        };
        Simulator.Write(faulty, _folder, 3);
        using (FitsFile file = FitsFile.Open(Path.Combine(_folder, "dark_-20C_300s_001.fits")))
        {
            Assert.Equal("300,0", file.FirstImage!.Header.Text("EXPTIME"));
            Assert.False(file.FirstImage.Header.Contains("CCD-TEMP"));
            Assert.False(file.FirstImage.Header.Contains("GAIN"));
        }
        long whole = new FileInfo(Path.Combine(_folder, "bias_-10C_001.fits")).Length;
        Assert.Equal(whole - 2000, new FileInfo(Path.Combine(_folder, "dark_-20C_300s_002.fits")).Length);
        Assert.DoesNotContain(Directory.GetFiles(_folder), f => f.EndsWith(".whole", StringComparison.Ordinal));
    }

    [Fact]
    public void AKeywordThatIsNotThereCannotBeReplaced()
    {
        CameraDescription faulty = Camera with
        {
            Faults = [new Fault { ReplaceKeywords = new Dictionary<string, string> { ["FILTER"] = "'L'" } }],
        };
        var error = Assert.Throws<CameraDescriptionException>(() => Simulator.Write(faulty, _folder, 3));
        Assert.Equal(
            "camera description, $.faults: the frame carries no keyword FILTER to replace. Name one that it "
                + "carries.",
            error.Message
        );
    }

    private sealed class Stop(CancellationTokenSource source) : IProgress<SimulationProgress>
    {
        public void Report(SimulationProgress value)
        {
            if (value.FramesWritten == 2)
            {
                source.Cancel();
            }
        }
    }
}
