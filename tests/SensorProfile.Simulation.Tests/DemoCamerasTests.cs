using SensorProfile.Frames;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Tests;

public class DemoCamerasTests
{
    [Fact]
    public void TarnNightHasWhatTheMeasurementsNeed()
    {
        CameraDescription camera = DemoCameras.Tarn9M();
        IReadOnlyList<SimulatedFrame> frames = new SimulatedNight(camera, 1).Frames;
        Assert.Equal(16, frames.Count(f => f.Kind == FrameKind.Bias));
        Assert.Equal(
            16,
            frames
                .Where(f => f.Kind == FrameKind.Flat)
                .Select(f => f.LightElectrons > 0 ? f.ExposureSeconds : 0)
                .Distinct()
                .Count()
        );
        Assert.Equal(
            [-20, -15, -10, -5, 0, 5],
            frames.Where(f => f.Kind == FrameKind.Dark).Select(f => f.TargetCelsius).Distinct().Order()
        );
        Assert.Equal(
            [10, 60, 120, 300],
            frames.Where(f => f.Kind == FrameKind.Dark).Select(f => f.ExposureSeconds).Distinct().Order()
        );
        Assert.True(
            frames[^1].StartUtc - frames[0].StartUtc < TimeSpan.FromHours(14),
            "An October night must be long enough."
        );
    }

    [Fact]
    public void TarnSaturatesInItsPixels()
    {
        var night = new SimulatedNight(DemoCameras.Tarn9M(), 1);
        SimulationTruth truth = SimulationTruth.Of(night);
        Assert.Equal("pixel", truth.SaturatedBy);
        ushort[] brightest = night.Render(night.Frames.Last(f => f.Kind == FrameKind.Flat));
        Assert.Equal(truth.SaturationLevel, PixelStatistics.Median(brightest), 5.0);
    }

    [Fact]
    public void FellSaturatesInItsConverter()
    {
        var night = new SimulatedNight(DemoCameras.Fell24C(), 1);
        Assert.Equal("adc", SimulationTruth.Of(night).SaturatedBy);
        Assert.Equal(65532, night.Render(night.Frames.Last(f => f.Kind == FrameKind.Flat)).Max());
    }

    [Fact]
    public void TheBuiltInTextIsTheOneInDemoData()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "demo-data")))
        {
            folder = folder.Parent;
        }
        Assert.NotNull(folder);
        Assert.Equal(
            CameraDescription.Read(Path.Combine(folder.FullName, "demo-data", "tarn-9m.json")).ToJson(),
            DemoCameras.Tarn9M().ToJson()
        );
        Assert.Equal(
            CameraDescription.Read(Path.Combine(folder.FullName, "demo-data", "fell-24c.json")).ToJson(),
            DemoCameras.Fell24C().ToJson()
        );
    }
}
