using SensorProfile.Fits.Tiles;

namespace SensorProfile.Fits.Tests.Tiles;

/// <summary>
/// Bit streams written by hand after FITS 4.0 §10.4.1: a block is either constant, coded with k low bits, or plain.
/// </summary>
public sealed class RiceCodecTests
{
    /// <summary>Width of the arithmetic, bits of the marker, marker of a plain block (k + 1).</summary>
    [Theory]
    [InlineData(1, 3, 7)]
    [InlineData(2, 4, 15)]
    [InlineData(4, 5, 26)]
    public void EveryKindOfBlockIsUnpacked(int bytes, int markerBits, int plain)
    {
        int[] expected = [20, 20, 20, 23, 18, 25, 100, 7, 90];
        var bits = new Bits();
        bits.Write(20, 8 * bytes); // the first pixel as it is
        bits.Write(0, markerBits); // constant: no bits for its three pixels
        bits.Write(2 + 1, markerBits); // k = 2
        foreach ((int from, int to) in new[] { (20, 23), (23, 18), (18, 25) })
        {
            uint folded = Folded(to - from);
            bits.Write(0, (int)(folded >> 2)); // so many zeros
            bits.Write(1, 1);
            bits.Write(folded & 3, 2);
        }
        bits.Write((uint)plain, markerBits);
        foreach ((int from, int to) in new[] { (25, 100), (100, 7), (7, 90) })
            bits.Write(Folded(to - from), 8 * bytes);
        int[] pixels = new int[9];
        RiceCodec.Decode(bits.ToArray(), 3, bytes, pixels);
        Assert.Equal(expected, pixels);
    }

    /// <summary>The highest k below the marker of a plain block is no marker.</summary>
    [Theory]
    [InlineData(1, 3, 6)]
    [InlineData(2, 4, 14)]
    [InlineData(4, 5, 25)]
    public void TheLastKBeforeThePlainBlockIsCoded(int bytes, int markerBits, int marker)
    {
        int k = marker - 1;
        var bits = new Bits();
        bits.Write(5, 8 * bytes);
        bits.Write((uint)marker, markerBits);
        bits.Write(1, 1); // no zeros
        bits.Write(Folded(7), k);
        int[] pixels = new int[1];
        RiceCodec.Decode(bits.ToArray(), 32, bytes, pixels);
        Assert.Equal(12, pixels[0]);
    }

    [Fact]
    public void AStreamThatLacksItsLastByteIsRefused()
    {
        var bits = new Bits();
        bits.Write(20, 16);
        bits.Write(15, 4);
        bits.Write(Folded(1), 16);
        byte[] whole = bits.ToArray();
        int[] pixels = new int[1];
        RiceCodec.Decode(whole, 32, 2, pixels);
        Assert.Equal(21, pixels[0]);
        Assert.Throws<InvalidDataException>(() => RiceCodec.Decode(whole.AsSpan(..^1), 32, 2, new int[1]));
    }

    private static uint Folded(int difference) => difference < 0 ? (uint)(-2 * difference - 1) : (uint)(2 * difference);

    private sealed class Bits
    {
        private readonly List<bool> bits = [];

        public void Write(uint value, int count)
        {
            for (int i = count - 1; i >= 0; i--)
                bits.Add((value >> i & 1) != 0);
        }

        public byte[] ToArray()
        {
            byte[] bytes = new byte[(bits.Count + 7) / 8];
            for (int i = 0; i < bits.Count; i++)
                if (bits[i])
                    bytes[i / 8] |= (byte)(128 >> (i % 8));
            return bytes;
        }
    }
}
