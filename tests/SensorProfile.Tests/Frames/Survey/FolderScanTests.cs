using System.Runtime.Versioning;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames.Survey;

public sealed class FolderScanTests : IDisposable
{
    private readonly FrameFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void FitsFilesAreFoundInOrderWhateverTheCaseOfTheirExtension()
    {
        string[] names = ["a.FIT", "b/c/x.fts.fz", "b/ä ö.Fits", "b.fits.gz", "z.fz"];
        foreach (string name in names)
            folder.Add(name);
        foreach (
            string other in (string[])
                ["readme.txt", "x.fits.part", ".hidden.fits", "~x.fits", "x.fits~", ".git/y.fits", "pack.gz"]
        )
            folder.Add(other);
        Assert.Equal(names, Names(folder.Path));
    }

    [Fact]
    public void ALongNameIsNoObstacle()
    {
        string name = new string('n', 250) + ".fit";
        folder.Add(name);
        Assert.Equal([name], Names(folder.Path));
    }

    [Fact]
    public void LinksAreFollowedButNeverInCircles()
    {
        string original = folder.Add("a/dark_1.fits");
        Directory.CreateSymbolicLink(folder.Full("a/up"), folder.Path);
        Directory.CreateSymbolicLink(folder.Full("b"), folder.Full("a"));
        File.CreateSymbolicLink(folder.Full("c.fits"), original);
        File.CreateSymbolicLink(folder.Full("self.fits"), folder.Full("self.fits"));
        Inventory inventory = folder.Read();
        Assert.Equal(["a/dark_1.fits"], inventory.Frames.Select(f => f.Name));
        Finding finding = inventory.Findings.Single(f => f.Code == FindingCodes.DuplicatePath);
        Assert.Equal(
            "1 file can be reached in more than one way (a path given twice, or a link); each file was taken "
                + "once.",
            finding.Message
        );
        Assert.Equal(["c.fits"], finding.Frames);
    }

    [Fact]
    public void TheSameFileGivenTwiceCountsOnce()
    {
        string path = folder.Add("dark_1.fits");
        Inventory inventory = FrameInventory.Read(
            [path, folder.Path, Path.Combine(folder.Path, ".", "dark_1.fits")],
            new InventoryOptions()
        );
        Assert.Single(inventory.Frames);
        Assert.Equal(["duplicate-path"], inventory.Findings.Select(f => f.Code));
    }

    [Fact]
    public void EqualNamesUnderTwoFoldersAreKeptApart()
    {
        folder.Add("monday/bias_1.fits");
        folder.Add("tuesday/bias_1.fits");
        Assert.Equal(
            ["monday/bias_1.fits", "tuesday/bias_1.fits"],
            Names(folder.Full("monday"), folder.Full("tuesday"))
        );
    }

    [Fact]
    public void AFileNamedByTheUserIsTriedWhateverItsExtension()
    {
        string path = folder.Add("frame.raw");
        Assert.Equal(["frame.raw"], Names(path));
    }

    [Fact, UnsupportedOSPlatform("windows")]
    public void AFolderThatCannotBeOpenedIsNamedAndTheRestIsRead()
    {
        folder.Add("a/dark_1.fits");
        folder.Add("locked/dark_2.fits");
        const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        File.SetUnixFileMode(
            folder.Path,
            Own
                | UnixFileMode.GroupRead
                | UnixFileMode.GroupExecute
                | UnixFileMode.OtherRead
                | UnixFileMode.OtherExecute
        );
        File.SetUnixFileMode(Path.Combine(folder.Path, "locked"), UnixFileMode.None);
        Inventory inventory;
        try
        {
            inventory = Unprivileged.Run(() => folder.Read());
        }
        finally
        {
            File.SetUnixFileMode(Path.Combine(folder.Path, "locked"), Own);
        }
        Assert.Equal(["a/dark_1.fits"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(
            "The folder locked cannot be opened; its frames are left out. Check its permissions, or copy it to "
                + "another place.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void APathThatLeadsNowhereIsNamed()
    {
        Inventory inventory = FrameInventory.Read([folder.Full("nothing")], new InventoryOptions());
        Assert.Equal("There is no such file or folder; check the path.", Assert.Single(inventory.Rejected).Reason);
        Assert.Equal(["path-missing", "no-frames"], inventory.Findings.Select(f => f.Code));
    }

    private static IEnumerable<string> Names(params string[] paths) =>
        FolderScan.Scan(paths, CancellationToken.None).Files.Select(f => f.Name);
}
