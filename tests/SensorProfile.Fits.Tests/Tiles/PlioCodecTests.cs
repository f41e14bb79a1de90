using System.Buffers.Binary;
using SensorProfile.Fits.Tiles;

namespace SensorProfile.Fits.Tests.Tiles;

public sealed class PlioCodecTests
{
    /// <summary>Every instruction once, traced by hand from FITS 4.0 §10.4.3.</summary>
    [Fact]
    public void EveryInstructionPaintsWhatItSays()
    {
        short[] words =
        [
            0,
            7,
            -100,
            0,
            0,
            0,
            0,
            0x0002,
            0x4003,
            0x1005,
            0x0001,
            0x4001,
            0x2002,
            0x5003,
            0x3001,
            0x6004,
            0x7001,
            0x0000,
        ];
        words[3] = (short)words.Length;
        var pixels = new int[14];
        // 2 zeros; 3 of value 1; value = 1·4096 + 5; 1 of it; +2; two zeros and one of it; −1; +4 and one of it; −1 and
        // one of it; the rest is 0
        PlioCodec.Decode(Bytes(words), pixels);
        Assert.Equal([0, 0, 1, 1, 1, 4101, 0, 0, 4103, 4106, 4105, 0, 0, 0], pixels);
    }

    [Fact]
    public void AListThatPaintsBeyondTheTileStopsAtItsEnd()
    {
        var pixels = new int[4];
        PlioCodec.Decode(Bytes([0, 7, -100, 10, 0, 0, 0, 0x4FFF, 0x4FFF, 0x5FFF]), pixels);
        Assert.Equal([1, 1, 1, 1], pixels);
    }

    [Theory]
    [InlineData(new short[] { 0, 7 })]
    [InlineData(new short[] { 0, 7, 100 })]
    [InlineData(new short[] { 0, 7, -100, 8, 0, 0, 0, 0x1000 })]
    public void AListThatEndsTooEarlyIsRefused(short[] words) =>
        Assert.Throws<InvalidDataException>(() => PlioCodec.Decode(Bytes(words), new int[4]));

    private static byte[] Bytes(short[] words)
    {
        var bytes = new byte[2 * words.Length];
        for (int i = 0; i < words.Length; i++)
            BinaryPrimitives.WriteInt16BigEndian(bytes.AsSpan(2 * i), words[i]);
        return bytes;
    }
}
