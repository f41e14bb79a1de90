using System.Text.Json;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Outside;

/// <summary>exiftool finds in our files what we wrote, and nothing wrong with them.</summary>
public sealed class ExifToolTests
{
    [NeedsProgramFact("exiftool", "libimage-exiftool-perl")]
    public void ExifToolReadsTheFacts()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("frame.dng");
        DngFrame frame = TestFrames.Noisy(150, 98, 12) with
        {
            ActiveArea = new RawArea(2, 4, 96, 146),
            Facts = new RawFacts
            {
                Camera = "Fell-24C",
                SerialNumber = "OM-0042",
                ExposureSeconds = 0.004,
                Iso = 1600,
                Time = new RawTime(new DateTime(2026, 2, 14, 23, 5, 9, 250), TimeSpan.FromHours(-3.5)),
                Orientation = RawOrientation.QuarterClockwise,
                Temperature = new RawTemperature(-7, 1, RawTemperaturePlace.Ambient, "AmbientTemperature"),
            },
        };
        DngWriter.Write(path, frame, TestFrames.Forms["lossless JPEG, two components, tiles"]);
        JsonElement said = Ask(path);
        Assert.Equal("Fell-24C", said.GetProperty("Model").GetString());
        Assert.Equal("OM-0042", said.GetProperty("CameraSerialNumber").GetString());
        Assert.Equal(0.004, said.GetProperty("ExposureTime").GetDouble());
        Assert.Equal(1600, said.GetProperty("ISO").GetInt32());
        Assert.Equal("2026:02:14 23:05:09", said.GetProperty("DateTimeOriginal").GetString());
        Assert.Equal("-03:30", said.GetProperty("OffsetTimeOriginal").GetString());
        Assert.Equal(25, said.GetProperty("SubSecTimeOriginal").GetInt32());
        Assert.Equal(6, said.GetProperty("Orientation").GetInt32());
        Assert.Equal(-7, said.GetProperty("AmbientTemperature").GetDouble());
        Assert.Equal("2 4 96 146", said.GetProperty("ActiveArea").GetString());
        Assert.Equal(64, said.GetProperty("BlackLevel").GetDouble());
        Assert.False(said.TryGetProperty("Warning", out JsonElement warning), warning.ToString());
    }

    [NeedsProgramFact("exiftool", "libimage-exiftool-perl")]
    public void ExifToolHasNothingToSayAgainstAnyForm()
    {
        using var folder = new TemporaryFolder();
        int number = 0;
        foreach (DngForm form in TestFrames.Forms.Values)
            // whole tiles: of larger ones it says that they are "oversized"
            DngWriter.Write(folder.File($"{number++}.dng"), TestFrames.Noisy(192, 192, 12), form);
        (int exit, string text) = ExternalTool.Run(
            "exiftool",
            "-validate",
            "-warning",
            "-a",
            "-ext",
            "dng",
            folder.Path
        );
        Assert.True(exit == 0, text);
        string[] complaints =
        [
            .. text.Split('\n')
                .Where(line =>
                    line.Contains("Warning", StringComparison.Ordinal)
                    || line.Contains("Error", StringComparison.Ordinal)
                    || line.Contains("Missing", StringComparison.Ordinal)
                ),
        ];
        Assert.True(complaints.Length == 0, text);
    }

    private static JsonElement Ask(string path)
    {
        (int exit, string text) = ExternalTool.Run("exiftool", "-json", "-n", "-a", path);
        Assert.True(exit == 0, text);
        return JsonDocument.Parse(text).RootElement[0];
    }
}
