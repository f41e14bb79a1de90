using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests;

/// <summary>The door: opening, reading rows, parking, closing.</summary>
public sealed class RawFileTests
{
    [Fact]
    public void StorageSaysHowTheSamplesStand()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("frame.dng");
        DngWriter.Write(path, EditedFile.Frame, TestFrames.Forms["lossless JPEG, two components, tiles"]);
        using RawFile file = RawFile.Open(path);
        Assert.Equal(
            new RawStorage(
                RawContainer.Dng,
                new Version(1, 4, 0, 0),
                RawCompression.LosslessJpeg,
                12,
                false,
                true,
                64,
                64,
                1
            ),
            file.Storage
        );
        Assert.Equal(path, file.Path);
        Assert.Empty(file.Warnings);
    }

    [Theory]
    [
        InlineData("49492A00", true),
        InlineData("4D4D002A", true),
        InlineData("49492B00", true),
        InlineData("49492A", false),
        InlineData("53494D50", false),
        InlineData("", false)
    ]
    public void FourBytesTellWhatMayBeOne(string hex, bool expected) =>
        Assert.Equal(expected, RawFile.MayBe(Convert.FromHexString(hex)));

    [Fact]
    public void RowsOutsideTheFrameAreRefused()
    {
        using RawFile file = RawFile.Open(new MemoryBytes(TestFrames.Bytes(EditedFile.Frame, new DngForm())));
        var room = new ushort[64];
        Assert.StartsWith(
            "Room for 33 samples is not a whole number of rows of 32.",
            Assert.Throws<ArgumentException>(() => file.ReadRows(0, new ushort[33])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => file.ReadRows(23, room));
        Assert.Throws<ArgumentOutOfRangeException>(() => file.ReadSensorRows(-1, room));
        file.ReadRows(22, room);
        Assert.Equal(EditedFile.Frame.Samples.Slice(22 * 32, 64).ToArray(), room);
    }

    [Fact]
    public void AMissingFileIsMissing() => Assert.Throws<FileNotFoundException>(() => RawFile.Open("no-such-file.dng"));

    [Fact]
    public void AClosedFileIsNotReadAgain()
    {
        using var folder = new TemporaryFolder();
        DngWriter.Write(folder.File("a.dng"), EditedFile.Frame);
        RawFile file = RawFile.Open(folder.File("a.dng"));
        file.Dispose();
        Assert.Throws<ObjectDisposedException>(() => file.ReadRows(0, new ushort[32]));
    }

    [Fact]
    public void AFileThatChangesWhileItIsParkedIsRefused()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("a.dng");
        DngWriter.Write(path, EditedFile.Frame);
        long length = new FileInfo(path).Length;
        using RawFile file = RawFile.Open(path);
        file.Park();
        using (FileStream stream = File.Open(path, FileMode.Append))
            stream.WriteByte(0);
        RawFormatException problem = Assert.Throws<RawFormatException>(() => file.ReadRows(0, new ushort[32]));
        Assert.Equal(
            $"a.dng: the file had {length} bytes when it was opened and has {length + 1} now. Read it again when "
                + "nothing writes to it any more.",
            problem.Message
        );
        Assert.Equal(
            $"The file had {length} bytes when it was opened and has {length + 1} now. Read it again when nothing "
                + "writes to it any more.",
            problem.Statement
        );
    }

    [Fact]
    public void SeveralThreadsReadTheSameFile()
    {
        DngFrame frame = TestFrames.Noisy(96, 160, 12);
        foreach (DngForm form in TestFrames.Forms.Values)
        {
            using RawFile file = RawFile.Open(new MemoryBytes(TestFrames.Bytes(frame, form)));
            Parallel.For(0, 40, i =>
            {
                var rows = new ushort[4 * 96];
                file.ReadRows(i * 4, rows);
                Assert.True(frame.Samples.Span.Slice(i * 4 * 96, rows.Length).SequenceEqual(rows));
            });
        }
    }

    [Fact]
    public void AfterDamageTheRowsBeforeItCanStillBeRead()
    {
        DngFrame frame = TestFrames.Noisy(64, 64, 12);
        byte[] bytes = TestFrames.Bytes(frame, TestFrames.Forms["lossless JPEG"]);
        int length = BitConverter.ToInt32(bytes, 4);
        bytes.AsSpan(length * 3 / 4, 40).Fill(0xFF);
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        var all = new ushort[64 * 64];
        Assert.Throws<RawFormatException>(() => file.ReadRows(0, all));
        file.ReadRows(0, all.AsSpan(0, 64 * 20));
        Assert.True(frame.Samples.Span[..(64 * 20)].SequenceEqual(all.AsSpan(0, 64 * 20)));
    }
}
