using System.Globalization;
using CsvHelper;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames;

/// <summary>
/// The headers of two real uncooled cameras, which name no frame kind; the kinds come from a capture table made of the
/// manifest.
/// Counts, exposures and temperatures are those of the manifest and the page beside the frames.
/// </summary>
public abstract class LabInventoryTests(string culture) : InCulture(culture)
{
    public sealed class Invariant() : LabInventoryTests("");

    public sealed class German() : LabInventoryTests("de-DE");

    [DataFact("lab-12bit", "lab-14bit")]
    public void FourteenBit()
    {
        Inventory inventory = Read("lab-14bit");
        Assert.Equal(
            [
                "bias 3.2E-05 s: 15 at 35.33",
                "dark 0.1 s: 5 at 35.60",
                "dark 1 s: 5 at 35.56",
                "dark 10 s: 5 at 34.66",
                "dark 30 s: 5 at 33.66",
                "dark 50 s: 5 at 33.26",
                "dark 70 s: 5 at 33.16",
                "dark 100 s: 5 at 33.02",
                "flat 0.01 s: 9 at 34.82",
            ],
            inventory.Sets.Select(Describe)
        );
        Assert.All(inventory.Frames, f =>
            Assert.Equal(
                ("RGGB", "CAMERA-A", 400, 300, 0.0, 340.0),
                (f.ColourFilter, f.Camera, f.Width, f.Height, f.Settings.Gain, f.Settings.Offset)
            )
        );
        Assert.Equal(new DateTimeOffset(2024, 4, 18, 14, 14, 4, 649, TimeSpan.Zero), inventory.Frames[0].StartUtc);
        Assert.Equal(
            ["decimal-comma", "file-unreadable", "temperature-drift", "temperature-follows-exposure"],
            inventory.Findings.Select(f => f.Code).Order()
        );
        Assert.Equal(
            "The longer the darks, the colder the sensor (35.6 °C at 0.1 s, 33.02 °C at 100 s): the effects of "
                + "exposure and temperature cannot be separated; take the exposures in mixed order, or let the "
                + "camera settle first.",
            inventory.Findings.Single(f => f.Code == FindingCodes.TemperatureFollowsExposure).Message
        );
    }

    [DataFact("lab-12bit", "lab-14bit")]
    public void TruncatedFilesAreLeftOutByName()
    {
        Inventory inventory = Read("lab-14bit");
        Assert.Equal(
            ["truncated/flat_truncated_01.fits", "truncated/flat_truncated_07.fits"],
            inventory.Rejected.Select(r => r.File)
        );
        Assert.All(inventory.Rejected, r =>
            Assert.Contains("the file ends inside the data unit", r.Reason, StringComparison.Ordinal)
        );
    }

    /// <summary>The probe reads 24.5, 25.2, 26.0 and 26.7 °C and jumps between them: no set falls apart.</summary>
    [DataFact("lab-12bit", "lab-14bit")]
    public void TwelveBit()
    {
        Inventory inventory = Read("lab-12bit");
        Assert.Equal(
            [
                "bias 6.4E-05 s: 15 at 25.84",
                "dark 0.1 s: 5 at 25.84",
                "dark 1 s: 5 at 25.98",
                "dark 10 s: 5 at 26.14",
                "dark 30 s: 5 at 25.98",
                "dark 50 s: 5 at 25.68",
                "dark 70 s: 5 at 26.00",
                "dark 100 s: 5 at 25.22",
                "dark 50 s: 4 at 25.60",
                "flat 0.005 s: 10 at 25.29",
            ],
            inventory.Sets.Select(Describe)
        );
        Assert.All(inventory.Frames, f => Assert.Equal("GRBG", f.ColourFilter));
        Assert.Equal(
            ["decimal-comma", "same-start-time", "temperature-steps"],
            inventory.Findings.Select(f => f.Code).Order()
        );
        Assert.Equal(
            "The temperature probe jumps back and forth by 0.8 °C between frames (24.5, 25.2, 26, 26.7 °C were read): "
                + "frames within 0.9 °C of their set's mean were pooled instead of 0.5 °C, and temperatures are no "
                + "better known than that.",
            inventory.Findings.Single(f => f.Code == FindingCodes.TemperatureSteps).Message
        );
    }

    [DataFact("lab-12bit", "lab-14bit")]
    public void OddAndMalformedFilesNeverStopTheRest()
    {
        Inventory inventory = FrameInventory.Read(
            [TestData.Path("fits-zoo"), TestData.Path("lab-12bit/bias")],
            new InventoryOptions()
        );
        Assert.Equal(15, inventory.Frames.Count(f => f.Name.StartsWith("bias_", StringComparison.Ordinal)));
        Assert.All(inventory.Rejected, r => Assert.False(string.IsNullOrWhiteSpace(r.Reason)));
        Assert.Contains("empty.fits", inventory.Rejected.Select(r => r.File));
        Assert.DoesNotContain("uint16.fits", inventory.Rejected.Select(r => r.File));
    }

    private static Inventory Read(string lab) =>
        FrameInventory.Read(
            [TestData.Path(lab)],
            new InventoryOptions { Table = TableOf(TestData.Path(lab + "/manifest.csv")) }
        );

    /// <summary>
    /// Kind and, for the torn frames (other rows of the same exposures), a label, from the manifest's group.
    /// </summary>
    private static CaptureTable TableOf(string manifest)
    {
        using CsvReader csv = new(new StreamReader(manifest), CultureInfo.InvariantCulture);
        List<CaptureRow> rows = [];
        csv.Read();
        csv.ReadHeader();
        while (csv.Read())
        {
            string group = csv.GetField("group")!;
            rows.Add(
                new CaptureRow
                {
                    File = csv.GetField("file")!,
                    Kind =
                        group.StartsWith("bias", StringComparison.Ordinal) ? FrameKind.Bias
                        : group.StartsWith("flat", StringComparison.Ordinal) ? FrameKind.Flat
                        : FrameKind.Dark,
                    Set = group.StartsWith("torn", StringComparison.Ordinal) ? "torn" : null,
                }
            );
        }
        return new CaptureTable(rows);
    }

    private static string Describe(FrameSet set) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{set.Kind.ToString().ToLowerInvariant()} {set.ExposureSeconds:R} s: {set.Frames.Count} at {set.TemperatureCelsius:0.00}"
        );
}
