using SensorProfile.Fits;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Tests;

public sealed class ReportMapsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("report-maps-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void AMapBecomesAPictureOfMeansOverWhatWasMeasured()
    {
        // 802 × 3 px: squares of 3 px, the last of them one column wide. Value = column; one pixel of the first square was not measured.
        float[] pixels = [.. Enumerable.Range(0, 802 * 3).Select(i => (float)(i % 802))];
        pixels[802] = float.NaN;                                              // column 0 of the second row
        FitsWriter.Write(Path.Combine(_folder, "glow.fits"), new FitsImage<float>([802, 3], pixels));

        MapPicture picture = Assert.Single(ReportMaps.Read(_folder, new CameraProfile { Modes = [new ModeProfile()] }).Pictures);

        Assert.Equal((0, "Amplifier glow", "e-/px/s", 268, 1), (picture.Mode, picture.Title, picture.Unit, picture.Width, picture.Height));
        Assert.Equal(9f / 8, picture.Values[0]);                              // (3·0 + 3·1 + 3·2 − 0) / 8
        Assert.Equal(4f, picture.Values[1]);
        Assert.Equal(801f, picture.Values[^1]);
        Assert.True(picture.Low < picture.High);
    }

    [Fact]
    public void AMapThatCannotBeReadIsAFindingAndStopsNothing()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "gain-1"));
        Directory.CreateDirectory(Path.Combine(_folder, "gain-2"));
        File.WriteAllText(Path.Combine(_folder, "gain-1", "glow.fits"), "no map");
        FitsWriter.Write(Path.Combine(_folder, "gain-2", "dark-rate.fits"), new FitsImage<float>([2, 1], new float[] { 1, 2 }));
        ModeProfile[] modes = [.. new[] { 1, 2 }.Select(gain => new ModeProfile { Settings = new ModeSettings { Gain = gain } })];

        ReportMaps maps = ReportMaps.Read(_folder, new CameraProfile { Modes = modes });

        Assert.Equal(1, Assert.Single(maps.Pictures).Mode);
        Assert.Equal("map-unreadable", Assert.Single(maps.Findings).Code);
        Assert.Empty(ReportMaps.Read(Path.Combine(_folder, "nowhere"), new CameraProfile { Modes = modes }).Pictures);
    }
}
