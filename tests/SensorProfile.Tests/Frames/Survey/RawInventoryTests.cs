using SensorProfile.Frames;
using SensorProfile.Frames.Headers;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Session;
using SensorProfile.Raw;

namespace SensorProfile.Tests.Frames.Survey;

/// <summary>Raw files beside FITS files: what they say, what they leave open, and what is passed over.</summary>
public sealed class RawInventoryTests : IDisposable
{
    private readonly RawFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void ARawFileSaysExposureIsoTimeTemperatureCameraAndColours()
    {
        folder.Add("night/a.dng", RawFolder.Dark);
        Frame frame = Assert.Single(folder.Read().Frames);
        Assert.Equal(FrameFormat.Raw, frame.Format);
        Assert.Equal((6, 4), (frame.Width, frame.Height));
        Assert.Equal(FrameKind.Unknown, frame.Kind);
        Assert.Equal(120, frame.ExposureSeconds);
        Assert.Equal(new ModeSettings { Iso = 800 }, frame.Settings);
        Assert.Equal(17, frame.TemperatureCelsius);
        Assert.Equal(new DateTimeOffset(2031, 10, 14, 20, 15, 30, 250, TimeSpan.Zero), frame.StartUtc);
        Assert.Equal("Fell-24C", frame.Camera);
        Assert.Equal("GRBG", frame.ColourFilter);
    }

    [Fact]
    public void WhatARawFileLeavesOpenIsSaidInItsOwnWords()
    {
        folder.Add("a.dng", new RawFacts { Camera = "Fell-24C" });
        Dictionary<string, string> findings = folder.Read().Findings.ToDictionary(f => f.Code, f => f.Message);
        Assert.Equal(
            "A raw file does not state its kind of frame, so no measurement can use 1 frame: fill in column kind of the "
                + "capture table.",
            findings[FindingCodes.KindMissing]
        );
        Assert.Equal(
            "No exposure (ExposureTime) in 1 frame: it is unknown; fill in column exposure_s of the capture table.",
            findings[FindingCodes.ExposureMissing]
        );
        Assert.StartsWith("No temperature in 1 frame: it is unknown", findings[FindingCodes.TemperatureMissing]);
        Assert.StartsWith("No time (DateTimeOriginal) in 1 frame", findings[FindingCodes.TimeMissing]);
        Assert.StartsWith("No ISO in the only frame of Fell-24C", findings[FindingCodes.GainMissing]);
        Assert.DoesNotContain(FindingCodes.OffsetMissing, findings.Keys);
        Assert.DoesNotContain(findings.Values, text => text.Contains("FITS") || text.Contains("IMAGETYP"));
    }

    [Fact]
    public void NamesAndTheCaptureTableSayTheKind()
    {
        folder.Add("darks/a.dng", RawFolder.Dark);
        Assert.Contains(
            "use the file or folder names, which say dark",
            Message(folder.Read(), FindingCodes.KindMissing),
            StringComparison.Ordinal
        );
        Inventory named = folder.Read(new InventoryOptions { NamesSay = true });
        Assert.Equal(FrameKind.Dark, Assert.Single(named.Frames).Kind);
        Assert.DoesNotContain(named.Findings, f => f.Code == FindingCodes.KindMissing);
    }

    [Fact]
    public void AReadingInWholeDegreesIsNamed()
    {
        folder.Add("a.dng", RawFolder.Dark);
        Assert.Equal(
            "The temperature in 1 frame is that of the air or of the camera's body, in whole degrees, not that of the "
                + "sensor's die: it was used as it stands; hot pixels order the frames more finely.",
            Message(folder.Read(), FindingCodes.TemperatureCoarse)
        );
    }

    [Fact]
    public void TheStepOfAReadingIsThatOfAllFrames()
    {
        RawTemperature half = RawFolder.Dark.Temperature! with { Celsius = 17.5, StepCelsius = 0.5 };
        folder.Add("a.dng", RawFolder.Dark);
        folder.Add("b.dng", RawFolder.Dark with { Temperature = half, Iso = 1600 });
        Assert.Contains(
            "in steps of 0.5 °C",
            Message(folder.Read(), FindingCodes.TemperatureCoarse),
            StringComparison.Ordinal
        );
    }

    /// <summary>
    /// A room keeps whole degrees the same for hours, where a reading of tenths would be called stuck.
    /// </summary>
    [Fact]
    public void ACoarseReadingMayStandStillForHours()
    {
        for (int i = 0; i < 5; i++)
            folder.Add($"{i}.dng", RawFolder.Dark with { Time = new RawTime(new(2031, 10, 14, 18 + i, 0, 0), null) });
        Inventory inventory = folder.Read();
        Assert.All(inventory.Frames, f => Assert.Equal(17, f.TemperatureCelsius));
        Assert.DoesNotContain(inventory.Findings, f => f.Code == FindingCodes.TemperatureStuck);
        Assert.Contains(inventory.Findings, f => f.Code == FindingCodes.TimeZoneMissing);
    }

    [Fact]
    public void TwoCamerasOfOneModelAreToldApartBySerialNumber()
    {
        folder.Add("a.dng", RawFolder.Dark);
        folder.Add("b.dng", RawFolder.Dark with { SerialNumber = "24-1008", Iso = 1600 });
        Assert.Equal(
            ["Fell-24C no. 24-1007", "Fell-24C no. 24-1008"],
            folder.Read().Frames.Select(f => f.Camera).Order()
        );
    }

    [Fact]
    public void ContentTellsWhatAFileIsNotItsName()
    {
        File.Move(folder.Add("a.dng", RawFolder.Dark), folder.Full("a.fits"));
        File.Move(folder.Add("b.dng", RawFolder.Dark with { Iso = 1600 }), folder.Full("b.bin"));
        Inventory inventory = folder.Read();
        Assert.Equal(["a.fits", "b.bin"], inventory.Frames.Select(f => f.Name));
        Assert.All(inventory.Frames, f => Assert.Equal(FrameFormat.Raw, f.Format));
    }

    [Fact]
    public void WhatCannotBeAFrameIsCountedByKind()
    {
        folder.Add("a.dng", RawFolder.Dark);
        for (int i = 0; i < 12; i++)
            File.WriteAllBytes(folder.Full($"{i}.jpg"), [0xFF, 0xD8, 0xFF, 0xE1, 0, 0]);
        File.WriteAllText(folder.Full("notes.txt"), "Süden, 3 °C");
        File.WriteAllText(folder.Full("table.csv"), "file,kind");
        File.WriteAllText(folder.Full("page.html"), "<html>");
        Inventory inventory = folder.Read();
        Assert.Empty(inventory.Rejected);
        Assert.Equal("12 JPEG pictures and 3 text files", PassedOver.Describe(inventory.PassedOver));
    }

    [Fact]
    public void TruthMapsBesideSimulatedFramesAreCalledThat()
    {
        folder.Add("a.dng", RawFolder.Dark);
        File.WriteAllText(folder.Full("glow.truth"), "SIMPLE  =                    T".PadRight(2880));
        File.WriteAllText(folder.Full("frame.fit.part"), "SIMPLE  =                    T".PadRight(2880));
        Assert.Equal("1 misnamed FITS file and 1 truth map", PassedOver.Describe(folder.Read().PassedOver));
    }

    [Fact]
    public void WhatIsNamedAndCanBeNoFrameIsRefusedWithTheReason()
    {
        File.WriteAllBytes(folder.Full("a.jpg"), [0xFF, 0xD8, 0xFF, 0xE1, 0, 0]);
        Inventory inventory = FrameInventory.Read([folder.Full("a.jpg")], new InventoryOptions());
        Assert.Equal(
            "It is a JPEG picture, whose values the camera has changed: give the raw frame instead.",
            Assert.Single(inventory.Rejected).Reason
        );
        Assert.DoesNotContain("FITS frame", Message(inventory, FindingCodes.NoFrames), StringComparison.Ordinal);
    }

    [Fact]
    public void CodesAlongACurveAreStraightenedAndNamed()
    {
        ushort[] table = [.. Enumerable.Range(0, 600).Select(i => (ushort)(i < 300 ? i : 300 + (4 * (i - 300))))];
        folder.Add("a.dng", RawFolder.Dark, change: frame => frame with { LinearisationTable = table });
        Assert.StartsWith(
            "The codes of 1 frame follow a curve (600 codes with steps of up to 4), which was straightened",
            Message(folder.Read(), FindingCodes.CurvedCodes),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void APictureUnderTheNameOfARawFileIsLeftOutByName()
    {
        folder.Add("a.dng", RawFolder.Dark);
        byte[] jpeg = [0xFF, 0xD8, 0xFF, 0xE1, 0, 0];
        File.WriteAllBytes(folder.Full("b.DNG"), jpeg);
        File.WriteAllBytes(folder.Full("c.jpg"), jpeg);
        Inventory inventory = folder.Read();
        Assert.Equal(["a.dng"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(
            ("b.DNG", "It is a JPEG picture, whose values the camera has changed: give the raw frame instead."),
            inventory.Rejected.Select(r => (r.File, r.Reason)).Single()
        );
        Assert.Equal("1 JPEG picture", PassedOver.Describe(inventory.PassedOver));
    }

    /// <summary>Frames shifted by a pixel in one file: each is a raw frame, and the first one serves.</summary>
    [Fact]
    public void OfSeveralMosaicsInAFileTheFirstIsTakenAndNamed()
    {
        folder.Add("a.dng", RawFolder.Dark);
        byte[] bytes = File.ReadAllBytes(folder.Full("a.dng"));
        int first = BitConverter.ToInt32(bytes, 4);
        int length = 2 + (12 * BitConverter.ToInt16(bytes, first)) + 4;
        byte[] twice = [.. bytes, .. bytes[first..(first + length)]];
        BitConverter.TryWriteBytes(twice.AsSpan(first + length - 4), bytes.Length);
        File.WriteAllBytes(folder.Full("a.dng"), twice);
        Inventory inventory = folder.Read();
        Assert.Equal(["a.dng"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(
            "1 file with more than one image: the first image of each was taken; save the others as files of their own to use "
                + "them, too.",
            Message(inventory, FindingCodes.SeveralImages)
        );
    }

    [Fact]
    public void ALinkThatLeadsNowhereIsNamed()
    {
        folder.Add("a.dng", RawFolder.Dark);
        File.CreateSymbolicLink(folder.Full("b.dng"), folder.Full("gone.dng"));
        Inventory inventory = folder.Read();
        Assert.Equal("b.dng", Assert.Single(inventory.Rejected).File);
        Assert.Empty(inventory.PassedOver);
    }

    [Fact]
    public void CorrectionsOfTheConverterAreNamedAndNotApplied()
    {
        HeaderReading header = RawHeader.Read(new RawFacts { Corrections = ["a map of gains"] }, "RGGB", null);
        Finding finding = Assert.Single(HeaderFindings.Merge([("a.dng", header.Issues)]), f =>
            f.Code == FindingCodes.CorrectionsNotApplied
        );
        Assert.Equal(
            "A converter would correct the codes of 1 frame before it computes colours (a map of gains); nothing of it was "
                + "applied: they are measured as the camera stored them.",
            finding.Message
        );
    }

    [Fact]
    public void ADamagedFileIsLeftOutAndTheRestGoesOn()
    {
        folder.Add("good.dng", RawFolder.Dark);
        File.WriteAllBytes(folder.Full("cut.dng"), File.ReadAllBytes(folder.Full("good.dng"))[..60]);
        Inventory inventory = folder.Read();
        Assert.Equal(["good.dng"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(["cut.dng"], inventory.Rejected.Select(r => r.File));
        Assert.Contains(inventory.Findings, f => f.Code == FindingCodes.FileUnreadable);
    }

    /// <summary>The exposure and ISO tags of this real file hold 0.</summary>
    [DataFact("raw")]
    public void ARealRawFileIsListed()
    {
        Inventory inventory = FrameInventory.Read([TestData.Path("raw")], new InventoryOptions());
        Frame frame = Assert.Single(inventory.Frames);
        // ActiveArea 26 152 1182 1886
        Assert.Equal((1734, 1156), (frame.Width, frame.Height));
        Assert.Null(frame.ExposureSeconds);
        Assert.Null(frame.Settings.Iso);
        Assert.NotNull(frame.ColourFilter);
        Assert.Equal("1 text file", PassedOver.Describe(inventory.PassedOver));
        Assert.Contains(inventory.Findings, f => f.Code == FindingCodes.ExposureMissing);
    }

    private static string Message(Inventory inventory, string code) =>
        Assert.Single(inventory.Findings, f => f.Code == code).Message;
}
