using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;
using SensorProfile.Raw;

namespace SensorProfile.Tests.Frames.Survey;

/// <summary>A camera without a thermometer, and a glass one that was read now and then.</summary>
public sealed class TypedTemperaturesTests : IDisposable
{
    private readonly RawFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>
    /// Frames of 120 s begin every 10 minutes: 18, unknown, unknown, 15 °C lie on a line of −1 °C a frame.
    /// </summary>
    [Fact]
    public void FramesBetweenTwoReadingsLieOnTheLineBetweenThem()
    {
        for (int i = 0; i < 5; i++)
            Add($"{i}.dng", new DateTime(2031, 10, 14, 21, 10 * i, 0));
        Inventory inventory = Read("0.dng,dark,18", "3.dng,dark,15");
        Assert.Equal([18, 17, 16, 15, 15], inventory.Frames.Select(f => f.TemperatureCelsius!.Value));
        Assert.Equal(
            "The temperature of 3 frames was interpolated in time between the readings that the capture table gives for 2 frames: "
                + "it is only as good as the thermometer was close to the sensor; if the hot pixels say otherwise, they correct it "
                + "when the darks are measured.",
            Assert.Single(inventory.Findings, f => f.Code == FindingCodes.TemperatureTyped).Message
        );
        Assert.DoesNotContain(inventory.Findings, f => f.Code == FindingCodes.TemperatureMissing);
        // a line between readings is no drift that anybody saw
        Assert.DoesNotContain(inventory.Findings, f => f.Code == FindingCodes.TemperatureDrift);
    }

    [Fact]
    public void AfterAPauseNothingIsKnown()
    {
        Add("a.dng", new DateTime(2031, 10, 14, 21, 0, 0));
        Add("b.dng", new DateTime(2031, 10, 14, 21, 45, 0));
        Inventory inventory = Read("a.dng,dark,18");
        Assert.Equal([18, null], inventory.Frames.Select(f => f.TemperatureCelsius));
        Assert.Contains(inventory.Findings, f => f.Code == FindingCodes.TemperatureMissing);
    }

    [Fact]
    public void WithoutReadingsNothingIsInvented()
    {
        Add("a.dng", new DateTime(2031, 10, 14, 21, 0, 0));
        Assert.Null(Assert.Single(folder.Read().Frames).TemperatureCelsius);
    }

    private void Add(string name, DateTime start) =>
        folder.Add(name, RawFolder.Dark with { Temperature = null, Time = new RawTime(start, TimeSpan.Zero) });

    private Inventory Read(params string[] rows)
    {
        string table = Path.Combine(Path.GetTempPath(), $"sensorprofile-{Guid.NewGuid():N}.csv");
        File.WriteAllLines(table, ["file,kind,temperature_c", .. rows]);
        try
        {
            return folder.Read(new InventoryOptions { Table = CaptureTable.Read(table) });
        }
        finally
        {
            File.Delete(table);
        }
    }
}
