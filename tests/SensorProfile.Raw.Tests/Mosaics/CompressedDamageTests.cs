using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Mosaics;

/// <summary>Damaged Deflate and LZW samples are named by strip and byte.</summary>
public sealed class CompressedDamageTests
{
    private const string Place = "test.dng, directory 0, strip 0, byte N: ";
    private const string Copy = " Copy the file again from the card, or leave it out.";

    [Fact]
    public void DamagedDeflateIsNamed()
    {
        byte[] noise = new byte[400];
        noise.AsSpan().Fill(0x55);
        Assert.Equal(
            Place + "the compressed samples are damaged (Deflate)." + Copy,
            EditedFile.Refusal(EditedFile.WithStrip(8, noise))
        );
        byte[] dictionary = [0x78, 0xBB, 0, 0, 0, 1, .. noise]; // asks for a preset dictionary (RFC 1950)
        Assert.Equal(
            Place + "the compressed samples are damaged (Deflate)." + Copy,
            EditedFile.Refusal(EditedFile.WithStrip(8, dictionary))
        );
        byte[] file = EditedFile.Bytes(
            tags => tags.Longs(Tag.StripByteCounts, 100),
            new DngForm { Compression = RawCompression.Deflate }
        );
        Assert.Equal(Place + "the compressed samples end too early (Deflate)." + Copy, EditedFile.Refusal(file));
    }

    [Theory]
    [InlineData("80", "the compressed samples end too early (LZW).")] // clear (256 = 1 0000 0000), then nothing
    [InlineData("804040", "the compressed samples end too early (LZW).")] // clear, end (257)
    // clear, 258
    [InlineData("804080", "the compressed samples are damaged (LZW): a code stands before it was defined.")]
    public void DamagedLzwIsNamed(string hex, string problem)
    {
        byte[] strip = [.. Convert.FromHexString(hex)];
        byte[] long0 = EditedFile.WithStrip(5, strip);
        Assert.Equal(Place + problem + Copy, EditedFile.Refusal(long0));
    }

    [Fact]
    public void AFileThatEndsWithinAStripWhileItIsReadIsNamed()
    {
        byte[] bytes = TestFrames.Bytes(EditedFile.Frame, new DngForm());
        using RawFile file = RawFile.Open(new ShrinkingBytes(bytes));
        Exception? problem = Record.Exception(() => file.ReadRows(0, new ushort[32 * 24]));
        Assert.Equal("test.dng, directory 0, strip 0, byte 8: the file ends within it." + Copy, problem?.Message);
    }

    /// <summary>A file that loses all but its directories once it is open.</summary>
    private sealed class ShrinkingBytes(byte[] bytes) : RawBytes
    {
        public override string File => "test.dng";

        public override long Length => bytes.Length;

        public override int Read(long offset, Span<byte> target)
        {
            if (offset == 8 && target.Length > 1000)
                return 0;
            int count = (int)Math.Min(target.Length, bytes.Length - offset);
            bytes.AsSpan((int)offset, count).CopyTo(target);
            return count;
        }
    }
}
