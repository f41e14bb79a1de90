using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Tests;

/// <summary>DATASUM and CHECKSUM against outside values (FITS checksum proposal, its C code, astropy).</summary>
public sealed class ChecksumTests
{
    [Fact]
    public void TheExampleOfTheProposalIsEncodedAsPrinted() =>
        Assert.Equal("hcHjjc9ghcEghc9g", Checksum.Encode(868229149));

    [Theory]
    [InlineData(0u, "0000000000000000")]
    [InlineData(1u, "0000100000000000")]
    [InlineData(0x12345678u, "N6AGN49EN4AEN49E")]
    [InlineData(0xFFFFFFFFu, "orrrrooooooooooo")]
    public void WordsAreEncodedInLettersAndDigits(uint word, string encoded) =>
        Assert.Equal(encoded, Checksum.EncodeComplemented(word));

    [Fact]
    public void DataSumsOfIntegersAndFloats()
    {
        Assert.Equal(589836u, DataSumOf<short>([1, 2, 3, 4, 5, 6]));
        Assert.Equal(65538u, DataSumOf<short>([-1, -1, -1, -1, 1, 2]));
        Assert.Equal(4294934529u, DataSumOf<ushort>([0, 1, 65535, 32768]));
        Assert.Equal(2331761126u, DataSumOf<float>([1f, -2.5f, 0.1f, 3e8f]));
        Assert.Equal(7u, DataSumOf<int>([int.MinValue, int.MaxValue, 7]));
        Assert.Equal(2488094483u, DataSumOf<double>([Math.PI]));
    }

    [Theory]
    [InlineData(' ', 1515870810u)]
    [InlineData('\0', 0u)]
    [InlineData('0', 2273806215u)]
    public void SumOfABlockOfOneCharacter(char character, uint sum)
    {
        byte[] block = new byte[2880];
        block.AsSpan().Fill((byte)character);
        Assert.Equal(sum, Checksum.Add(0, block));
    }

    [Fact]
    public void AWholeHduAddsUpToAllOnes()
    {
        string[] cards =
        [
            "SIMPLE  =                    T",
            "BITPIX  =                   16",
            "NAXIS   =                    2",
            "NAXIS1  =                    3",
            "NAXIS2  =                    2",
            "DATASUM = '589836  '",
            "CHECKSUM= '0000000000000000'",
            "END",
        ];
        byte[] hdu = new byte[5760];
        Encoding.ASCII.GetBytes(string.Concat(cards.Select(card => card.PadRight(80))).PadRight(2880), hdu);
        for (short i = 1; i <= 6; i++)
            BinaryPrimitives.WriteInt16BigEndian(hdu.AsSpan(2878 + (2 * i)), i);
        Assert.Equal(1045670444u, Checksum.Add(0, hdu));
        string encoded = Checksum.Encode(1045670444);
        Assert.Equal("dgaFgZUEdfaEdZUE", encoded);
        Encoding.ASCII.GetBytes(encoded, hdu.AsSpan((6 * 80) + 11));
        Assert.Equal(uint.MaxValue, Checksum.Add(0, hdu));
    }

    [Fact]
    public void EveryLengthGivesTheSumOfTheDefinition()
    {
        byte[] bytes = new byte[4 * 300];
        new Random(1).NextBytes(bytes);
        bytes.AsSpan(0, 80).Fill(0xFF);
        for (int words = 0; words <= 257; words++)
        {
            ReadOnlySpan<byte> part = bytes.AsSpan(4 * (words % 5), 4 * words);
            Assert.Equal(Checksum.AddScalar(17, part), Checksum.Add(17, part));
        }
    }

    [Fact]
    public void TheOrderOfTheWordsDoesNotMatter()
    {
        uint[] words = [.. Enumerable.Range(0, 720).Select(i => (uint)i * 2654435761)];
        byte[] Bytes(IEnumerable<uint> source) => [.. source.SelectMany(BitConverter.GetBytes)];
        Assert.Equal(Checksum.Add(0, Bytes(words)), Checksum.Add(0, Bytes(words.Reverse())));
    }

    private static uint DataSumOf<T>(T[] pixels)
        where T : unmanaged
    {
        using var folder = new TemporaryFolder();
        FitsWriter.Write(folder.File("a.fits"), new FitsImage<T>(pixels.Length, 1, pixels));
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        Assert.True(file.Hdus[0].VerifyChecksum(out _));
        return uint.Parse(file.Hdus[0].Header.Text("DATASUM")!, CultureInfo.InvariantCulture);
    }
}
