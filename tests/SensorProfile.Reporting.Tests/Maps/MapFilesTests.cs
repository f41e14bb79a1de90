using SensorProfile.Characterisation;
using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Maps;

namespace SensorProfile.Reporting.Tests.Maps;

public sealed class MapFilesTests : IDisposable
{
    private const int Width = 900, Height = 6;
    private readonly string folder = Directory.CreateTempSubdirectory("maps-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void MapsComeBackAsTheyWereWrittenWithUnitAndOrigin()
    {
        ModeMaps maps = Maps();
        MapFiles.Write(Profile(1), [maps], folder);
        Assert.Equal(["dark-rate.fits", "defects.fits", "read-noise.fits"], Directory.GetFiles(Path.Combine(folder, "maps")).Select(Path.GetFileName).Order(StringComparer.Ordinal));

        using FitsFile file = FitsFile.Open(Path.Combine(folder, "maps", "dark-rate.fits"));
        FitsHdu image = file.FirstImage!;
        float[] read = new float[Width * Height];
        image.ReadRows(0, read.AsSpan());
        Assert.Equal(maps.DarkRate!, read);                                  // not a number where not measured, bit for bit
        Assert.Equal("e-/px/s", image.Header.Text("BUNIT"));
        Assert.Equal(-10, image.Header.Number("REFTEMP"));
        Assert.Equal("Tarn-9M", image.Header.Text("INSTRUME"));
        Assert.Equal("abc123", image.Header.Text("INDIGEST"));

        using FitsFile defects = FitsFile.Open(Path.Combine(folder, "maps", "defects.fits"));
        Assert.Equal(FitsPixelType.UInt8, defects.FirstImage!.PixelType);
    }

    [Fact]
    public void SeveralModesHaveAFolderEach()
    {
        MapFiles.Write(Profile(2), [Maps(), Maps()], folder);
        Assert.True(File.Exists(Path.Combine(folder, "maps", "gain-0-offset-30", "dark-rate.fits")));
        Assert.True(File.Exists(Path.Combine(folder, "maps", "gain-100-offset-30", "read-noise.fits")));
    }

    [Fact]
    public void TheReportFindsThePicturesOfWhatWasWritten()
    {
        MapFiles.Write(Profile(2), [Maps(), Maps()], folder);
        ReportMaps pictures = ReportMaps.Read(Path.Combine(folder, "maps"), Profile(2));
        Assert.Equal([0, 0, 1, 1], pictures.Pictures.Select(p => p.Mode));
        Assert.Empty(pictures.Findings);
    }

    private static CameraProfile Profile(int modes) => new()
    {
        CreatedUtc = new DateTimeOffset(2031, 10, 15, 8, 0, 0, TimeSpan.Zero),
        Camera = new CameraInfo { Name = "Tarn-9M", Width = Width, Height = Height },
        Modes = [.. Enumerable.Range(0, modes).Select(i => new ModeProfile { Settings = new ModeSettings { Gain = 100 * i, Offset = 30 }, DarkCurrent = new DarkCurrentProfile { ReferenceTemperature = -10 } })],
        Frames = new FramesInfo { InputDigest = "abc123" },
    };

    /// <summary>The first pixel was not measured.</summary>
    private static ModeMaps Maps()
    {
        float[] rate = [.. Enumerable.Range(0, Width * Height).Select(i => 0.01f * (1 + (i % Width)))];
        rate[0] = float.NaN;
        return new ModeMaps { Width = Width, Height = Height, DarkRate = rate, ReadNoise = [.. rate.Select(r => r + 1)], Defects = new byte[Width * Height] };
    }
}
