using System.Globalization;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames.Survey;

public sealed class StuckTemperaturesTests : IDisposable
{
    private readonly FrameFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void TwentyDegreesForHoursWithoutASetTemperatureIsStuck()
    {
        folder.AddSeries("dark", 70, "2025-10-04T21:00:00", _ =>
            [("CCD-TEMP", "20.0"), ("SET-TEMP", ""), ("EXPTIME", "50")]
        );
        Inventory inventory = folder.Read();
        Assert.All(inventory.Frames, f => Assert.Null(f.TemperatureCelsius));
        Finding finding = Assert.Single(inventory.Findings);
        Assert.Equal(("temperature-stuck", 70), (finding.Code, finding.Frames.Count));
        Assert.Equal(
            "The sensor temperature is stuck at 20 °C in 70 frames, which the set temperature or the elapsed "
                + "time contradicts: it is taken as unknown; fill in column temperature_c of the capture table "
                + "if you know it.",
            finding.Message
        );
    }

    [Fact]
    public void TwentyDegreesForHoursBesideAColdSetTemperatureIsStuck() =>
        Assert.Equal(["temperature-stuck"], Codes(70, _ => ("20.0", "-10.0")));

    [Fact]
    public void ARegulatedReadingToATenthOfADegreeIsNot()
    {
        Assert.Equal([], Codes(70, i => (i % 40 == 0 ? "-10.0" : "-10.1", "-10.0")));
        Assert.Equal(["temperature-constant"], Codes(70, _ => ("-10.0", "")));
    }

    [Fact]
    public void AReadingThatAlwaysEqualsTheSetTemperatureIsUsedWithANote()
    {
        folder.AddSeries("dark", 10, "2025-10-04T21:00:00", _ => [("CCD-TEMP", "-10.0")]);
        Inventory inventory = folder.Read();
        Assert.All(inventory.Frames, f => Assert.Equal(-10, f.TemperatureCelsius));
        Finding finding = Assert.Single(inventory.Findings);
        Assert.Equal(
            (
                Severity.Note,
                "The sensor temperature equals the set temperature in all of 10 frames: it was used, but may be the "
                    + "set temperature written in place of a reading; check that the capture program reads the sensor."
            ),
            (finding.Severity, finding.Message)
        );
    }

    [Fact]
    public void OneReadingUnderTwoSetTemperaturesIsStuckAtOnce() =>
        Assert.Equal(["temperature-stuck"], Codes(6, i => ("-10.0", i < 3 ? "-10.0" : "-20.0")));

    [Fact]
    public void AProbeThatStopsHalfWayIsFoundAndTheFirstHalfStays()
    {
        folder.AddSeries("dark", 140, "2025-10-04T21:00:00", i =>
            [
                ("CCD-TEMP", i < 70 ? (i % 2 == 0 ? "-10.0" : "-10.1") : "-10.0"),
                ("SET-TEMP", i < 70 ? "-10.0" : "-20.0"),
                ("EXPTIME", "50"),
            ]
        );
        Inventory inventory = folder.Read();
        Assert.Equal(70, inventory.Frames.Count(f => f.TemperatureCelsius is null));
        Assert.All(inventory.Frames.Take(70), f => Assert.NotNull(f.TemperatureCelsius));
    }

    [Fact]
    public void LessThanAnHourIsNoEvidence() => Assert.Equal([], Codes(50, _ => ("20.0", "")));

    [Fact]
    public void WithoutTimesTheExposuresCount()
    {
        // 65 minutes
        for (int i = 0; i < 13; i++)
            folder.Add(
                $"dark_{i:00}.fits",
                ("DATE-OBS", ""),
                ("CCD-TEMP", "20.0"),
                ("SET-TEMP", ""),
                ("EXPTIME", "300")
            );
        Assert.Contains("temperature-stuck", folder.Read().Findings.Select(f => f.Code));
    }

    [Fact]
    public void TheTableWinsOverAStuckReading()
    {
        folder.AddSeries("dark", 70, "2025-10-04T21:00:00", _ => [("CCD-TEMP", "20.0"), ("SET-TEMP", "")]);
        CaptureTable table = new([
            .. Enumerable
                .Range(1, 70)
                .Select(i => new CaptureRow
                {
                    File = string.Create(CultureInfo.InvariantCulture, $"dark_{i:00}.fits"),
                    TemperatureCelsius = -12,
                }),
        ]);
        Inventory inventory = folder.Read(new InventoryOptions { Table = table });
        Assert.All(inventory.Frames, f => Assert.Equal(-12, f.TemperatureCelsius));
        Assert.Empty(inventory.Findings);
    }

    private IEnumerable<string> Codes(int count, Func<int, (string Reading, string Set)> temperatures)
    {
        foreach (string old in Directory.EnumerateFiles(folder.Path))
            File.Delete(old);
        folder.AddSeries("dark", count, "2025-10-04T21:00:00", i =>
            [("CCD-TEMP", temperatures(i).Reading), ("SET-TEMP", temperatures(i).Set), ("EXPTIME", "50")]
        );
        return folder.Read().Findings.Select(f => f.Code);
    }
}
