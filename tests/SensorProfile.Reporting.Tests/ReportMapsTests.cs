using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Tests;

public sealed class ReportMapsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("report-maps-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void AMapBecomesAPictureOfMeansOverWhatWasMeasured()
    {
        // 802 × 3 px: squares of 3 px, the last of them one column wide. Value = column; one pixel of the first square
        // was not measured.
        float[] pixels = [.. Enumerable.Range(0, 802 * 3).Select(i => (float)(i % 802))];
        pixels[802] = float.NaN; // column 0 of the second row
        FitsWriter.Write(Path.Combine(_folder, "glow.fits"), new FitsImage<float>([802, 3], pixels));

        MapPicture picture = Assert.Single(
            ReportMaps.Read(_folder, new CameraProfile { Modes = [new ModeProfile()] }).Pictures
        );

        Assert.Equal(
            (0, "Amplifier glow", "e-/px/s", 268, 1),
            (picture.Mode, picture.Title, picture.Unit, picture.Width, picture.Height)
        );
        Assert.Equal(9f / 8, picture.Values[0]); // (3·0 + 3·1 + 3·2 − 0) / 8
        Assert.Equal(4f, picture.Values[1]);
        Assert.Equal(801f, picture.Values[^1]);
        Assert.True(picture.Low < picture.High);
    }

    [Fact]
    public void ASingleHotPixelIsNotLostInALargeSensorsPicture()
    {
        // 2000 × 20 px of 0.01 in squares of 5 px; one pixel of 2: a mean would show it as 0.09.
        float[] pixels = [.. Enumerable.Repeat(0.01f, 2000 * 20)];
        pixels[7 * 2000 + 1003] = 2;
        FitsWriter.Write(Path.Combine(_folder, "dark-rate.fits"), new FitsImage<float>([2000, 20], pixels));
        byte[] classes = new byte[2000 * 20];
        classes[7 * 2000 + 1003] = 2 | 64; // hot, and flickering
        FitsWriter.Write(Path.Combine(_folder, "defects.fits"), new FitsImage<byte>([2000, 20], classes));
        var mode = new ModeProfile
        {
            FixedPattern = new FixedPatternProfile { Thresholds = new DefectThresholds { HotRate = 0.2 } },
        };

        IReadOnlyList<MapPicture> pictures = ReportMaps.Read(_folder, new CameraProfile { Modes = [mode] }).Pictures;

        Assert.Equal(["dark-rate", "defects"], pictures.Select(p => p.Map));
        Assert.All(pictures, p => Assert.Equal((400, 4, 2000, 20), (p.Width, p.Height, p.FrameWidth, p.FrameHeight)));
        Assert.Equal(2f, pictures[0].Values[1 * 400 + 200]);
        Assert.Equal("hot", pictures[1].Classes[(int)pictures[1].Values[1 * 400 + 200] - 1]);
        Assert.Equal(1, pictures[1].Values.Count(v => v > 0));
    }

    [Fact]
    public void AMapThatCannotBeReadIsAFindingAndStopsNothing()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "gain-1"));
        Directory.CreateDirectory(Path.Combine(_folder, "gain-2"));
        File.WriteAllText(Path.Combine(_folder, "gain-1", "glow.fits"), "no map");
        FitsWriter.Write(
            Path.Combine(_folder, "gain-2", "dark-rate.fits"),
            new FitsImage<float>([2, 1], new float[] { 1, 2 })
        );
        ModeProfile[] modes =
        [
            .. new[] { 1, 2 }.Select(gain => new ModeProfile { Settings = new ModeSettings { Gain = gain } }),
        ];

        ReportMaps maps = ReportMaps.Read(_folder, new CameraProfile { Modes = modes });

        Assert.Equal(1, Assert.Single(maps.Pictures).Mode);
        Assert.Equal("map-unreadable", Assert.Single(maps.Findings).Code);
        Assert.Empty(ReportMaps.Read(Path.Combine(_folder, "nowhere"), new CameraProfile { Modes = modes }).Pictures);
    }
}
