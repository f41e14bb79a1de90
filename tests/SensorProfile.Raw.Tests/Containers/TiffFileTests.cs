using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Containers;

/// <summary>
/// Directories that contradict the file are refused, or passed over where the mosaic does not need them.
/// </summary>
public sealed class TiffFileTests
{
    private const string Copy = " Copy the file again from the card, or leave it out.";

    [Theory]
    [InlineData(
        "",
        "test.dng, byte N: expected the first bytes of a TIFF or DNG file, found an empty file. Leave it out, or convert it to DNG."
    )]
    [InlineData(
        "53494D504C452020",
        "test.dng, byte N: expected the first bytes of a TIFF or DNG file, found 53494D50. Leave it out, or convert it to DNG."
    )]
    [InlineData(
        "49492A0008",
        "test.dng, byte N: expected the first bytes of a TIFF or DNG file, found 49492A00. Leave it out, or convert it to DNG."
    )]
    [InlineData(
        "49492B0008000000",
        "test.dng, byte N: expected the first bytes of a TIFF or DNG file, found 49492B00. Leave it out, or convert it to DNG."
    )]
    [InlineData(
        "49492B00040000001000000000000000",
        "test.dng, byte N: this is BigTIFF, the form for files above 4 GB, with offsets of other than 8 bytes. Save the "
            + "frame as ordinary TIFF or DNG."
    )]
    [InlineData(
        "4D4D002B00080000000000000000FFFF",
        "test.dng, directory 0, byte N: the directory would begin at byte N of a file of 16 bytes." + Copy
    )]
    [InlineData(
        "4D4D002B000800007FFFFFFFFFFFFFFF",
        "test.dng, directory 0, byte N: the directory would begin at byte N of a file of 16 bytes." + Copy
    )]
    [InlineData(
        "49492A0064000000",
        "test.dng, directory 0, byte N: the directory would begin at byte N of a file of 8 bytes." + Copy
    )]
    [InlineData("4D4D002A000000080000", "test.dng, directory 0, byte N: expected 1 to 4096 entries, found 0." + Copy)]
    [InlineData(
        "4D4D002A000000080010",
        "test.dng, directory 0, byte N: its 16 entries end at byte N, but the file ends after 10 bytes." + Copy
    )]
    public void AFileThatIsNoTiffIsRefused(string hex, string expected) =>
        Assert.Equal(expected, EditedFile.Refusal(Convert.FromHexString(hex)));

    [Fact]
    public void BigTiffIsReadLikeItsOrdinaryForm()
    {
        foreach ((string name, DngForm form) in TestFrames.Forms)
        {
            byte[] ordinary = TestFrames.Bytes(TestFrames.Noisy(64, 60, 12), form);
            byte[] big = BigTiff.From(ordinary);
            Assert.True(TestFrames.Read(ordinary).AsSpan().SequenceEqual(TestFrames.Read(big)), name);
            using RawFile one = RawFile.Open(new MemoryBytes(ordinary));
            using RawFile other = RawFile.Open(new MemoryBytes(big));
            Assert.Equal((one.Storage, one.Facts.Iso), (other.Storage, other.Facts.Iso));
            Assert.Equal(one.Mosaic.BlackLevel!.Pattern, other.Mosaic.BlackLevel!.Pattern);
        }
    }

    [Fact]
    public void DirectoriesThatRunInACircleAreReadOnce()
    {
        byte[] bytes = EditedFile.Bytes(_ => { });
        int first = BitConverter.ToInt32(bytes, 4);
        int next = first + 2 + (12 * BitConverter.ToInt16(bytes, first));
        BitConverter.TryWriteBytes(bytes.AsSpan(next), first);
        Assert.Equal(
            [
                "broken-directory test.dng, next directory, byte N: the directory was read before: the directories "
                    + "run in a circle. The directory was ignored.",
            ],
            EditedFile.Warnings(bytes)
        );
    }

    [Fact]
    public void ABrokenSubdirectoryIsPassedOver()
    {
        byte[] bytes = EditedFile.Bytes(tags => tags.Longs(Tag.SubIFDs, 4));
        Assert.Equal(
            [
                $"broken-directory test.dng, sub-directory, byte N: the directory would begin at byte N of a file of "
                    + $"{bytes.Length} bytes. The directory was ignored.",
            ],
            EditedFile.Warnings(bytes)
        );
        byte[] text = EditedFile.Bytes(tags => tags.Text(Tag.SubIFDs, "ab"));
        Assert.Equal(
            [
                "broken-directory test.dng, directory 0, tag SubIFDs (330), byte N: expected whole numbers, found "
                    + "values of type ASCII. The tag was ignored.",
            ],
            EditedFile.Warnings(text)
        );
    }

    [Fact]
    public void MoreDirectoriesThanAnyCameraWritesArePassedOver()
    {
        byte[] bytes = EditedFile.Bytes(tags =>
            tags.Longs(Tag.SubIFDs, [.. Enumerable.Range(0, 65).Select(i => (long)i)])
        );
        Assert.Equal(
            [
                "broken-directory test.dng, directory 0, tag SubIFDs (330), byte N: expected at most 64 values, found "
                    + "65. The tag was ignored.",
            ],
            EditedFile.Warnings(bytes)
        );
        byte[] chain = Chain(70);
        Assert.Contains(
            "broken-directory test.dng, next directory, byte N: the file has more than 64 directories; the rest "
                + "was ignored.",
            EditedFile.Warnings(chain)
        );
    }

    [Theory]
    [InlineData(nameof(Tag.ImageWidth), 12, "expected whole numbers, found values of type DOUBLE.")]
    [InlineData(nameof(Tag.ImageWidth), 99, "the type 99 does not exist.")]
    public void AValueOfTheWrongTypeIsNamed(string name, int type, string problem)
    {
        Tag tag = Enum.Parse<Tag>(name);
        byte[] bytes = EditedFile.Bytes(_ => { });
        SetType(bytes, tag, type);
        Assert.Equal(
            $"test.dng, directory 0, tag {tag} ({(int)tag}), byte N: {problem}{Copy}",
            EditedFile.Refusal(bytes)
        );
    }

    [Fact]
    public void ValuesBeyondTheEndOfTheFileAreNamed()
    {
        byte[] bytes = EditedFile.Bytes(tags => tags.Longs(Tag.ActiveArea, 0, 0, 24, 32));
        int entry = EntryOf(bytes, Tag.ActiveArea);
        BitConverter.TryWriteBytes(bytes.AsSpan(entry + 8), 1_000_000);
        Assert.Equal(
            "test.dng, directory 0, tag ActiveArea (50829), byte N: its values stand at bytes 1000000 to "
                + $"1000015, but the file ends after {bytes.Length} bytes.{Copy}",
            EditedFile.Refusal(bytes)
        );
    }

    [Theory]
    [InlineData(nameof(Tag.Software), "expected text, found values of type SHORT.")]
    [InlineData(nameof(Tag.BlackLevel), "expected numbers, found values of type ASCII.")]
    public void AnOptionalValueOfTheWrongTypeIsPassedOver(string name, string problem)
    {
        Tag tag = Enum.Parse<Tag>(name);
        byte[] bytes = EditedFile.Bytes(tags =>
        {
            if (tag == Tag.Software)
                tags.Shorts(tag, 1);
            else
                tags.Text(tag, "ab");
        });
        Assert.Contains(
            $"meaningless-tag test.dng, directory 0, tag {tag} ({(int)tag}), byte N: {problem} The tag was "
                + "ignored.",
            EditedFile.Warnings(bytes)
        );
    }

    private static int EntryOf(byte[] bytes, Tag tag)
    {
        int first = BitConverter.ToInt32(bytes, 4);
        return Enumerable
            .Range(0, BitConverter.ToInt16(bytes, first))
            .Select(i => first + 2 + (12 * i))
            .First(at => BitConverter.ToUInt16(bytes, at) == (ushort)tag);
    }

    private static void SetType(byte[] bytes, Tag tag, int type) =>
        BitConverter.TryWriteBytes(bytes.AsSpan(EntryOf(bytes, tag) + 2), (ushort)type);

    /// <summary>A good file, and so many directories with one entry each behind its own.</summary>
    private static byte[] Chain(int number)
    {
        byte[] good = EditedFile.Bytes(_ => { });
        const int linkBytes = 18;
        byte[] bytes = [.. good, .. new byte[number * linkBytes]];
        int first = BitConverter.ToInt32(bytes, 4);
        BitConverter.TryWriteBytes(bytes.AsSpan(first + 2 + (12 * BitConverter.ToInt16(bytes, first))), good.Length);
        for (int i = 0; i < number; i++)
        {
            int at = good.Length + (i * linkBytes);
            bytes[at] = 1;
            if (i + 1 < number)
                BitConverter.TryWriteBytes(bytes.AsSpan(at + 14), at + linkBytes);
        }
        return bytes;
    }
}
