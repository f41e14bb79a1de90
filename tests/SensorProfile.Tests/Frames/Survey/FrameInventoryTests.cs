using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames.Survey;

public sealed class FrameInventoryTests : IDisposable
{
    private readonly FrameFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void OneBadFileNeverStopsTheRest()
    {
        folder.Add("a.fits");
        folder.Text("b.fits", "this is no FITS file");
        byte[] cut = File.ReadAllBytes(folder.Add("c.fits", ("DATE-OBS", "'2025-10-04T22:00:00.5'")));
        File.WriteAllBytes(folder.Full("c.fits"), cut[..2882]);
        Inventory inventory = folder.Read();
        Assert.Equal(["a.fits"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(["b.fits", "c.fits"], inventory.Rejected.Select(r => r.File));
        Assert.StartsWith("HDU 0, byte ", inventory.Rejected[1].Reason, StringComparison.Ordinal);
        Assert.Equal(
            "2 files left out as unreadable (b.fits, c.fits): the list of rejected files says why; copy them "
                + "again from the camera if you can.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void AColourPictureIsNoRawFrame()
    {
        FitsWriter.Write(folder.Full("rgb.fits"), new FitsImage<ushort>([4, 2, 3], new ushort[24]));
        Assert.Equal(
            "It holds 3 image planes (a colour picture or a cube), which a raw frame never does.",
            Assert.Single(folder.Read().Rejected).Reason
        );
    }

    [Fact]
    public void AnImageInAnExtensionIsFoundWithTheKeywordsOfThePrimaryHeader()
    {
        FitsCard[] primary = [FitsCard.Of("IMAGETYP", "Dark"), FitsCard.Of("EXPTIME", 60.0), FitsCard.Of("GAIN", 100)];
        FitsWriter.Write(
            folder.Full("two.fits"),
            [new FitsImage<ushort>(4, 2, new ushort[8], primary), new FitsImage<ushort>(4, 2, new ushort[8])]
        );
        Inventory inventory = folder.Read();
        Assert.Equal(
            (0, FrameKind.Dark, 60.0),
            (inventory.Frames[0].Hdu, inventory.Frames[0].Kind, inventory.Frames[0].ExposureSeconds)
        );
        Assert.Contains(
            "1 file with more than one image: the first image of each was taken; save the others as files of their own to "
                + "use them, too.",
            inventory.Findings.Select(f => f.Message)
        );
    }

    [Fact]
    public void ACopyIsLeftOut()
    {
        string original = folder.Add("night/dark_1.fits");
        Directory.CreateDirectory(folder.Full("backup"));
        File.Copy(original, folder.Full("backup/dark_1.fits"));
        Inventory inventory = folder.Read();
        Assert.Single(inventory.Frames);
        Assert.Equal(
            [("night/dark_1.fits", "It is a copy of backup/dark_1.fits, byte for byte.")],
            inventory.Rejected.Select(r => (r.File, r.Reason))
        );
        Assert.Equal(
            "1 file left out as copies of others, byte for byte: a frame counted twice makes the noise look "
                + "smaller than it is.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void TwoFramesOfOneInstantAreTold()
    {
        folder.Add("dark_1.fits");
        folder.Add("dark_1_calibrated.fits");
        Assert.Equal(
            ("same-start-time", 2),
            (Assert.Single(folder.Read().Findings).Code, folder.Read().Findings[0].Frames.Count)
        );
    }

    [Fact]
    public void WholeSecondsAgreeByChance()
    {
        folder.Add("dark_1.fits", ("DATE-OBS", "'2025-10-04T21:00:00'"));
        folder.Add("dark_2.fits", ("DATE-OBS", "'2025-10-04T21:00:00'"));
        Assert.Empty(folder.Read().Findings);
    }

    [Fact]
    public void FramesComeInOrderOfTimeThenOfName()
    {
        folder.Add("b.fits", ("DATE-OBS", "'2025-10-04T21:00:00'"));
        folder.Add("a.fits", ("DATE-OBS", "'2025-10-04T22:00:00'"));
        folder.Add("d.fits", ("DATE-OBS", ""));
        folder.Add("c.fits", ("DATE-OBS", ""));
        Assert.Equal(["b.fits", "a.fits", "c.fits", "d.fits"], folder.Read().Frames.Select(f => f.Name));
    }

    [Fact]
    public void TheResultDoesNotDependOnParallelism()
    {
        folder.AddSeries("dark", 60, "2025-10-04T21:00:00", i =>
            [("CCD-TEMP", FrameFolder.Number(-10 - i % 9)), ("EXPTIME", i % 5 == 0 ? "-1" : "30")]
        );
        folder.Text("x.fits", "no");
        Inventory one = folder.Read(new InventoryOptions { MaxParallelism = 1 });
        foreach (int threads in (int[])[2, 3, 8])
        {
            Inventory many = folder.Read(new InventoryOptions { MaxParallelism = threads });
            Assert.Equal(one.Frames, many.Frames);
            Assert.Equal(one.Rejected, many.Rejected);
            Assert.Equal(one.Findings.Select(f => f.Message), many.Findings.Select(f => f.Message));
            Assert.Equal(
                one.Sets.Select(s => (s.TemperatureCelsius, s.Frames.Count)),
                many.Sets.Select(s => (s.TemperatureCelsius, s.Frames.Count))
            );
        }
    }

    [Fact]
    public void EachFrameIsInExactlyOneSet()
    {
        folder.AddSeries("dark", 30, "2025-10-04T21:00:00", i => [("CCD-TEMP", FrameFolder.Number(-10 - i * 0.2))]);
        Inventory inventory = folder.Read();
        Assert.Equal(
            inventory.Frames.Select(f => f.Name).Order(),
            inventory.Sets.SelectMany(s => s.Frames).Select(f => f.Name).Order()
        );
    }

    [Fact]
    public void ItStopsWhenAsked()
    {
        folder.Add("dark_1.fits");
        Assert.ThrowsAny<OperationCanceledException>(() =>
            FrameInventory.Read([folder.Path], new InventoryOptions(), ct: new CancellationToken(canceled: true))
        );
    }
}
