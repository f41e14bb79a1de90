using SensorProfile.Raw.Jpeg;

namespace SensorProfile.Raw.Tests.Jpeg;

/// <summary>
/// Huffman codes are made as short as can be, never too long, and read back by look-up and by search alike.
/// </summary>
public sealed class HuffmanTests
{
    [Fact]
    public void TheCodeOfATextbookIsFound()
    {
        // Frequencies 1, 2, 4, 8, 16 and a reserved value rarer than all: depths 5, 4, 3, 2, 1 (T.81, K.2).
        HuffmanCode code = HuffmanCode.For([16, 8, 4, 2, 1]);
        Assert.Equal([1, 2, 3, 4, 5], code.Lengths);
        Assert.Equal([0b0, 0b10, 0b110, 0b1110, 0b11110], code.Codes);
    }

    [Fact]
    public void FrequenciesThatAskForVeryLongCodesGiveSixteenBitsAtMost()
    {
        // Fibonacci numbers make the deepest tree: 17 values and the reserved one would need 17 bits.
        long[] fibonacci = new long[17];
        for (int i = 0; i < fibonacci.Length; i++)
            fibonacci[i] = i < 2 ? 1 : fibonacci[i - 1] + fibonacci[i - 2];
        HuffmanCode code = HuffmanCode.For(fibonacci);
        Assert.Equal(16, code.Lengths.Max());
        Assert.Null(HuffmanTable.Fault(code.Counts, code.Values));
        // room is left for the code of all ones (Kraft)
        Assert.True(code.Lengths.Sum(length => Math.Pow(2, -length)) < 1);
    }

    [Fact]
    public void EveryCodeIsFoundBySearchAndEveryShortDifferenceByLookUp()
    {
        long[] frequencies = [.. Enumerable.Range(0, 17).Select(value => 1L << (value * 2 % 17))];
        HuffmanCode code = HuffmanCode.For(frequencies);
        HuffmanTable table = HuffmanTable.Build(code.Counts, code.Values);
        for (int value = 0; value <= 16; value++)
        {
            ulong bits = (ulong)code.Codes[value] << (64 - code.Lengths[value]);
            Assert.Equal((uint)(code.Lengths[value] | (value << 8)), table.Search(bits));
            Assert.Equal(code.Lengths[value] + value <= HuffmanTable.LookupBits, table.Look(bits) != 0);
        }
        Assert.Equal(0u, table.Search(ulong.MaxValue));
    }

    [Theory]
    [InlineData(0, 1, -1), InlineData(1, 1, 1)]
    [InlineData(0, 2, -3), InlineData(1, 2, -2), InlineData(2, 2, 2), InlineData(3, 2, 3)]
    [InlineData(0, 15, -32767), InlineData(32767, 15, 32767), InlineData(16384, 15, 16384)]
    // T.81, table H.2
    public void DifferencesAreThoseOfTheStandard(int low, int bits, int difference) =>
        Assert.Equal(difference, HuffmanTable.Difference(low, bits));
}
