using SensorProfile.Frames;
using SensorProfile.Raw;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Writing;

/// <summary>The night of an ordinary camera: the same pixels as in FITS, with what a DNG can say of them.</summary>
public sealed class DngNightTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sensorprofile-simulation-").FullName;

    private static readonly CameraDescription Camera = new()
    {
        Name = "Fell-24C",
        Width = 32,
        Height = 20,
        ColourFilter = "GRBG",
        Bits = 14,
        BiasLevel = 1023.6,
        ReadNoise = 3,
        Cooled = false,
        Files = FrameFiles.Dng,
        Settings = new HeaderSettings { Iso = 1600 },
        Shots = [new Shot { Kind = FrameKind.Bias }, new Shot { Kind = FrameKind.Dark, Exposure = 300 }],
    };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void EveryFrameIsADngWithTheNightsPixels()
    {
        Simulator.Write(Camera, _folder, 3);
        var night = new SimulatedNight(Camera, 3);
        Assert.Equal(2, Directory.GetFiles(_folder, "*.dng").Length);
        Assert.Empty(Directory.GetFiles(_folder, "*.fits"));
        foreach (SimulatedFrame frame in night.Frames)
        {
            using RawFile file = RawFile.Open(Path.Combine(_folder, frame.FileName));
            var pixels = new ushort[32 * 20];
            file.ReadRows(0, pixels);
            Assert.Equal(night.Render(frame), pixels);
        }
    }

    [Fact]
    public void TheDescriptionNamesTheKindOfFile()
    {
        const string dng = """{ "width": 32, "height": 20, "files": "dng", "shots": [{ "kind": "bias" }] }""";
        Assert.Equal(FrameFiles.Dng, CameraDescription.Parse(dng).Files);
        CameraDescription silent = CameraDescription.Parse(
            dng.Replace("\"files\": \"dng\",", "", StringComparison.Ordinal)
        );
        Assert.Equal(FrameFiles.Fits, silent.Files);
    }

    [Fact]
    public void TheFileSaysWhatACameraWouldSay()
    {
        Simulator.Write(Camera, _folder, 3);
        SimulatedFrame dark = new SimulatedNight(Camera, 3).Frames[1];
        using RawFile file = RawFile.Open(Path.Combine(_folder, dark.FileName));
        Assert.Equal(("Fell-24C", 300, 1600), (file.Facts.Camera, file.Facts.ExposureSeconds, file.Facts.Iso));
        Assert.Equal(dark.StartUtc, file.Facts.Time!.Utc);
        Assert.Equal(dark.ReportedCelsius!.Value, file.Facts.Temperature!.Celsius, 0.005);
        Assert.Equal((1024.0, 16383.0), (file.Mosaic.BlackLevel!.At(0, 0), file.Mosaic.WhiteLevel!.Value));
        Assert.Equal("GRBG", file.Mosaic.ColourFilter!.Name);
        Assert.Empty(file.Warnings);
    }

    [Fact]
    public void ABiasHasTheShortestExposureAndAProbeItsOwnSteps()
    {
        Simulator.Write(Camera with { Thermometer = new Thermometer { Resolution = 0.5 } }, _folder, 3);
        using RawFile bias = RawFile.Open(Path.Combine(_folder, new SimulatedNight(Camera, 3).Frames[0].FileName));
        Assert.Equal(1.0 / 8000, bias.Facts.ExposureSeconds!.Value, 1e-12);
        Assert.Equal(0.5, bias.Facts.Temperature!.StepCelsius);
    }

    [Fact]
    public void FaultsLeaveOutWhatTheyOmitAndCutTheFile()
    {
        var fault = new Fault
        {
            Shot = 2,
            OmitKeywords = ["EXPTIME"],
            CutBytes = 40,
        };
        Simulator.Write(Camera with { Faults = [fault] }, _folder, 3);
        string cut = Path.Combine(_folder, new SimulatedNight(Camera, 3).Frames[1].FileName);
        Assert.Throws<RawFormatException>(() => RawFile.Open(cut));
        Simulator.Write(
            Camera with
            {
                Faults = [fault with { CutBytes = 0 }],
            },
            _folder,
            3,
            new SimulationOptions { Overwrite = true }
        );
        using RawFile file = RawFile.Open(cut);
        Assert.Null(file.Facts.ExposureSeconds);
    }

    [Fact]
    public void ADngHasNoKeywordsToReplace()
    {
        var fault = new Fault
        {
            Shot = 1,
            ReplaceKeywords = new Dictionary<string, string> { ["EXPTIME"] = "'abc'" },
        };
        CameraDescriptionException problem = Assert.Throws<CameraDescriptionException>(() =>
            Simulator.Write(Camera with { Faults = [fault] }, _folder, 3)
        );
        Assert.Contains(
            "a DNG has no keywords to replace. Write the night as FITS, or leave replaceKeywords out.",
            problem.Message,
            StringComparison.Ordinal
        );
    }
}
