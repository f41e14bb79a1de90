using System.Text;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames.Capture;

public abstract class CaptureTableTests(string culture) : InCulture(culture)
{
    public sealed class Invariant() : CaptureTableTests("");

    public sealed class German() : CaptureTableTests("de-DE");

    private const string Columns = "file,kind,exposure_s,temperature_c,gain,offset,iso,binning,set,use\r\n";
    private readonly FrameFolder folder = new();

    protected override void Dispose(bool disposing)
    {
        folder.Dispose();
        base.Dispose(disposing);
    }

    [Fact]
    public void AFilledCellWinsOverTheHeaderAndAnEmptyOneLeavesIt()
    {
        folder.Add("dark_1.fits", ("CCD-TEMP", "-273.15"), ("EXPTIME", "-1"));
        Inventory inventory = ReadWith(Columns + "dark_1.fits,Dark Flat,12.5,-20.3,,,800,2,left lamp,\r\n");
        Frame frame = Assert.Single(inventory.Frames);
        Assert.Equal(
            (FrameKind.DarkFlat, 12.5, -20.3, "left lamp"),
            (frame.Kind, frame.ExposureSeconds, frame.TemperatureCelsius, frame.SetLabel)
        );
        Assert.Equal(
            new()
            {
                Gain = 100,
                Offset = 30,
                Iso = 800,
                Binning = "2x2",
            },
            frame.Settings
        );
        Assert.Empty(inventory.Findings); // what the table corrects is no fault any more
    }

    [Theory]
    [InlineData("no")]
    [InlineData("0")]
    [InlineData("FALSE")]
    public void UseNoLeavesAFrameOut(string use)
    {
        folder.Add("dark_1.fits");
        folder.Add("dark_2.fits", ("DATE-OBS", "'2025-10-04T22:00:00.5'"));
        Inventory inventory = ReadWith($"file,use\ndark_2.fits,{use}\n");
        Assert.Equal(["dark_1.fits"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(
            [("dark_2.fits", "Left out by the capture table.")],
            inventory.Rejected.Select(r => (r.File, r.Reason))
        );
        Assert.Empty(inventory.Findings);
    }

    [Fact]
    public void AKindInTheTableOverrulesAStack()
    {
        folder.Add("m.fits", ("IMAGETYP", "'Master Dark'"));
        Assert.Equal(FrameKind.Dark, Assert.Single(ReadWith("file,kind\nm.fits,dark\n").Frames).Kind);
    }

    [Fact]
    public void ASpreadsheetOfAnotherLocaleIsUnderstood()
    {
        folder.Add("Dunkelbild ü.fits");
        folder.Text(
            "t.csv",
            "Datum;File;Exposure-S;temperature c;comment\r\n4.10.25;Dunkelbild ü.fits;0,5;-10,25;\"a;b\"\r\n",
            new UTF8Encoding(true)
        );
        CaptureTable table = CaptureTable.Read(folder.Full("t.csv"));
        Frame frame = Assert.Single(folder.Read(new InventoryOptions { Table = table }).Frames);
        Assert.Equal((0.5, -10.25), (frame.ExposureSeconds, frame.TemperatureCelsius));
        Assert.Equal(
            [
                "t.csv is separated by semicolons; it was read that way, nothing needs to be done.",
                "t.csv has unknown columns, which were not used: Datum, comment; the columns are file, kind, "
                    + "exposure_s, temperature_c, gain, offset, iso, binning, set, use.",
                "t.csv writes numbers with a decimal comma (first in line 2: 0,5); they were read as decimals, not as thousands.",
            ],
            table.Findings.Select(f => f.Message)
        );
    }

    [Fact]
    public void LatinLettersAreUnderstood()
    {
        folder.Add("süd_1.fits");
        folder.Text("t.csv", "file\tkind\nsüd_1.fits\tbias\n", Encoding.Latin1);
        CaptureTable table = CaptureTable.Read(folder.Full("t.csv"));
        Assert.Equal(["capture-table-encoding", "capture-table-delimiter"], table.Findings.Select(f => f.Code));
        Assert.Equal(FrameKind.Bias, Assert.Single(folder.Read(new InventoryOptions { Table = table }).Frames).Kind);
    }

    [Theory]
    [InlineData(
        "file,exposure_s\na.fits,abc",
        "t.csv, line 2, column exposure_s: expected a number, found 'abc'. Correct the cell, or leave it empty to keep the header's value."
    )]
    [InlineData(
        "file,exposure_s\na.fits,-1",
        "t.csv, line 2, column exposure_s: expected seconds, 0 or more, found -1. Correct the cell, or leave "
            + "it empty to keep the header's value."
    )]
    [InlineData(
        "file,temperature_c\n\na.fits,263.15",
        "t.csv, line 3, column temperature_c: expected °C between \u2212100 and 80, found 263.15. Correct the "
            + "cell, or leave it empty to keep the header's value."
    )]
    [InlineData(
        "file,exposure_s\na.fits,\"1.234,5\"",
        "t.csv, line 2, column exposure_s: expected a number, found '1.234,5'. Correct the cell, or leave it "
            + "empty to keep the header's value."
    )]
    [InlineData(
        "file,kind\n\"a\nb.fits\",dark\nc.fits,drak",
        "t.csv, line 4, column kind: expected bias, dark, flat, dark flat or light, found 'drak'. Correct the "
            + "cell, or leave it empty to keep the header's value."
    )]
    [InlineData(
        "file,binning\na.fits,0x2",
        "t.csv, line 2, column binning: expected a binning such as 1x1 or 2x2, found '0x2'. Correct the cell, "
            + "or leave it empty to keep the header's value."
    )]
    [InlineData(
        "file,use\na.fits,maybe",
        "t.csv, line 2, column use: expected yes or no, found 'maybe'. Write no to leave the frame out, or leave the cell empty to use it."
    )]
    [InlineData(
        "file,kind\n,dark",
        "t.csv, line 2, column file: the cell is empty; name the file, or delete the line."
    )]
    [InlineData(
        "file,kind\na.fits,dark\na.fits,bias",
        "t.csv, line 3, column file: 'a.fits' is already in line 2; keep one of the two rows."
    )]
    [InlineData(
        "name,kind\na.fits,dark",
        "t.csv, line 1, column file: the column is missing (found: name, kind); name the column that holds the file names 'file'."
    )]
    [InlineData(
        "file,kind,Kind\na.fits,dark,dark",
        "t.csv, line 1, column kind: the column appears twice; remove one of them."
    )]
    [InlineData(
        "",
        "t.csv: the table is empty; its first line must name the columns file, kind, exposure_s, "
            + "temperature_c, gain, offset, iso, binning, set, use."
    )]
    [InlineData(
        "file,kind\na\"b.fits,dark",
        "t.csv, line 2: a quotation mark is inside an unquoted cell; put the whole cell in "
            + "quotation marks and double the inner ones."
    )]
    [InlineData(
        "file,kind\n/night/a\0.fits,dark",
        "t.csv, line 2, column file: the name holds a null character, which no file's name does; write it again."
    )]
    public void ABadCellIsNamedByLineAndColumn(string content, string message) =>
        Assert.Equal(
            message,
            Assert.Throws<CaptureTableException>(() => CaptureTable.Read(folder.Text("t.csv", content))).Message
        );

    [Fact]
    public void FilesAreFoundByWholeNameByItsEndOrByBareName()
    {
        foreach (string name in (string[])["a/x_1.fits", "b/x_1.fits", "b/c/y_1.fits", "z_1.fits"])
            folder.Add(name, ("DATE-OBS", ""));
        Inventory inventory = ReadWith("file,set\na\\x_1.fits,whole\nc/Y_1.FITS,end\nz_1.fits,bare\n");
        Assert.Equal(["whole", "end", null, "bare"], inventory.Frames.Select(f => f.SetLabel));
        Assert.Equal(["time-missing"], inventory.Findings.Select(f => f.Code));
    }

    [Fact]
    public void RowsThatFitNothingOrTwoFilesAreTold()
    {
        foreach (string name in (string[])["a/x_1.fits", "b/x_1.fits", "z_1.fits"])
            folder.Add(name, ("DATE-OBS", ""));
        Inventory inventory = ReadWith("file,set\nx_1.fits,p\nlost.fits,q\n./z_1.fits,r\nz_1.FITS,s\n");
        Assert.Equal([null, null, "r"], inventory.Frames.Select(f => f.SetLabel));
        Assert.Equal(
            [
                "1 row of t.csv without a matching file among those given (line 3: lost.fits): nothing was corrected; "
                    + "check the names in column file.",
                "2 rows of t.csv not used because the file is ambiguous (line 2: x_1.fits fits 2 files, line "
                    + "5: z_1.FITS means the same file as line 4: z_1.fits): write the name with its folders in "
                    + "column file, once.",
            ],
            inventory
                .Findings.Where(f => f.Code.StartsWith("capture-table", StringComparison.Ordinal))
                .Select(f => f.Message)
        );
    }

    [Fact]
    public void ATableWrittenFromAnInventoryGivesTheSameInventory()
    {
        folder.AddSeries("darks/d, \"best\"", 4, "2025-10-04T21:00:00", i =>
            [("CCD-TEMP", i == 3 ? "999" : "-10.05"), ("EXPTIME", "0,1"), ("OFFSET", "")]
        );
        folder.AddSeries("unsorted/ä", 2, "2025-10-04T22:00:00", _ => [("IMAGETYP", ""), ("GAIN", "1.5")]);
        folder.Add("out.fits", ("DATE-OBS", "'2025-10-04T23:00:00.5'"));
        Inventory first = ReadWith("file,use,set\nout.fits,no,\nä_01.fits,,\"left; \"\"lamp\"\"\"\n");

        string path = folder.Full("written.csv");
        CaptureTable.Write(path, first);
        Inventory second = folder.Read(new InventoryOptions { Table = CaptureTable.Read(path) });

        Assert.Equal(first.Frames, second.Frames);
        Assert.Equal(first.LeftOut, second.LeftOut);
        Assert.Equal(first.Rejected, second.Rejected);
        Assert.Equal(
            first.Sets.Select(s => string.Join('|', s.Frames.Select(f => f.Name))),
            second.Sets.Select(s => string.Join('|', s.Frames.Select(f => f.Name)))
        );
        Assert.Equal(CaptureTable.TextOf(first), CaptureTable.TextOf(second));
        Assert.DoesNotContain(Directory.EnumerateFiles(folder.Path), f =>
            f.EndsWith(".part", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void TheWrittenTableIsPlainCsv()
    {
        folder.Add("dark_1.fits", ("EXPTIME", "0.1"));
        string path = folder.Full("written.csv");
        CaptureTable.Write(path, folder.Read());
        Assert.Equal(Columns + "dark_1.fits,dark,0.1,-10.1,100,30,,1x1,,yes\r\n", File.ReadAllText(path));
    }

    private Inventory ReadWith(string table) =>
        folder.Read(new InventoryOptions { Table = CaptureTable.Read(folder.Text("t.csv", table)) });
}
