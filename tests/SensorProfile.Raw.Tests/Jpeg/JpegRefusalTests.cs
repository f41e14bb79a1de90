using SensorProfile.Raw.Jpeg;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Jpeg;

/// <summary>
/// JPEG images that are damaged, lossy, or made to take much time are refused at their place in the strip.
/// </summary>
public sealed class JpegRefusalTests
{
    private const string Place = "test.dng, directory 0, strip 0, byte N: ";
    private const string Copy = " Copy the file again from the card, or leave it out.";

    // Markers of a good image of one component: FFD8, FFC3 at 2, FFC4 at 15, its table at 20, FFDA behind it.
    private const int FrameAt = 2;
    private const int TableAt = 15;

    private static byte[] Good(int restartLines = 0) =>
        LosslessJpegEncoder.Encode(
            EditedFile.Frame.Samples.Span,
            32,
            12,
            new DngForm { JpegRestartLines = restartLines }
        );

    private static int ScanAt(byte[] jpeg) => jpeg.AsSpan().IndexOf(new byte[] { 0xFF, 0xDA });

    private static string Refusal(byte[] strip) => EditedFile.Refusal(EditedFile.WithStrip(7, strip));

    private static string Refusal(Action<byte[]> change)
    {
        byte[] jpeg = Good();
        change(jpeg);
        return Refusal(jpeg);
    }

    [Fact]
    public void TheGoodOneIsRead() => Assert.Equal("", Refusal(Good()));

    [Fact] // T.81, A.2.2: the samples of one component stand one after the other whatever its factors are
    public void TheFactorsOfASingleComponentAreOfNoMatter() =>
        Assert.Equal("", Refusal(jpeg => jpeg[FrameAt + 11] = 0x22));

    [Fact] // T.81, B.1.1.2
    public void BytesFFMayStandBeforeARestartMarker()
    {
        byte[] jpeg = Good(restartLines: 8);
        int restart = jpeg.AsSpan().IndexOf(new byte[] { 0xFF, 0xD0 });
        byte[] filled = [.. jpeg[..restart], .. Enumerable.Repeat((byte)0xFF, 40), .. jpeg[restart..]];
        Assert.Equal(EditedFile.Frame.Samples.ToArray(), TestFrames.Read(EditedFile.WithStrip(7, filled)));
    }

    [Fact]
    public void LossyJpegIsRefused()
    {
        Assert.Equal(
            Place
                + "the samples are compressed with loss (JPEG, FFC0): what is left of their noise is not the "
                + "sensor's. Take frames in the camera's raw format, without lossy compression.",
            Refusal(jpeg => jpeg[FrameAt + 1] = 0xC0)
        );
        Assert.Equal(
            Place
                + "this form of lossless JPEG (FFCB) is not known to this reader. Convert it to DNG with another compression.",
            Refusal(jpeg => jpeg[FrameAt + 1] = 0xCB)
        );
    }

    [Fact] // a survey, which reads no sample, took such a file for a frame
    public void LossyJpegIsRefusedOnOpening()
    {
        byte[] jpeg = Good();
        jpeg[FrameAt + 1] = 0xC0;
        using var source = new MemoryBytes(EditedFile.WithStrip(7, jpeg));
        RawFormatException refused = Assert.Throws<RawFormatException>(() => RawFile.Open(source));
        Assert.Equal(RawRefusal.Lossy, refused.Refusal);
    }

    [Fact]
    public void WhatIsNoJpegImageIsRefused()
    {
        Assert.Equal(Place + "expected the start of a JPEG image (FFD8)." + Copy, Refusal(jpeg => jpeg[1] = 0xD9));
        Assert.Equal(Place + "expected a JPEG marker (FF)." + Copy, Refusal(jpeg => jpeg[FrameAt] = 0));
        Assert.Equal(
            Place + "the JPEG marker FFD9 has no place before the samples." + Copy,
            Refusal(jpeg => jpeg[FrameAt + 1] = 0xD9)
        );
        Assert.Equal(
            Place + "a JPEG marker is shorter than its own length." + Copy,
            Refusal(jpeg => jpeg[FrameAt + 3] = 1)
        );
        byte[] comments = [0xFF, 0xD8, .. Enumerable.Repeat(new byte[] { 0xFF, 0xFE, 0, 2 }, 70).SelectMany(c => c)];
        Assert.Equal(Place + "more than 64 JPEG markers precede the samples." + Copy, Refusal(comments));
    }

    [Fact]
    public void AnImageThatEndsWithinItsHeaderIsRefused() =>
        Assert.Equal(
            Place + "498 more bytes were expected, but 94 are left of 100." + Copy,
            Refusal([0xFF, 0xD8, 0xFF, 0xFE, 500 >> 8, 500 & 0xFF, .. new byte[94]])
        );

    [Fact]
    public void AnImpossibleFrameHeaderIsRefused()
    {
        Assert.Equal(
            Place + "the JPEG frame header (SOF3) has a wrong length or appears twice." + Copy,
            Refusal(jpeg => jpeg[FrameAt + 9] = 2)
        );
        Assert.Equal(
            Place + "the JPEG frame header (SOF3) asks for 32 × 24 samples of 17 bits in 1 components." + Copy,
            Refusal(jpeg => jpeg[FrameAt + 4] = 17)
        );
        Assert.Equal(
            Place
                + "the components of the JPEG image differ in size: the camera reduced the colours. Take frames in "
                + "the camera's full raw format.",
            Refusal([
                .. Good()[..FrameAt],
                0xFF,
                0xC3,
                0,
                14,
                12,
                0,
                24,
                0,
                16,
                2,
                1,
                0x21,
                0,
                2,
                0x11,
                0,
                .. new byte[300],
            ])
        );
        Assert.Equal(
            Place + "the JPEG image has 23 lines of 1 × 32 samples, which do not make 24 rows of 32." + Copy,
            Refusal(jpeg => jpeg[FrameAt + 6] = 23)
        );
    }

    [Fact]
    public void AHuffmanTableThatIsNoPrefixCodeIsRefused()
    {
        Assert.Equal(
            Place + "a Huffman table (DHT) is impossible: the table has more codes than can be told apart." + Copy,
            Refusal(Table([3], [0, 1, 2]))
        );
        Assert.Equal(
            Place + "a Huffman table (DHT) is impossible: a difference would have more than 16 bits." + Copy,
            Refusal(Table([1], [17]))
        );
        Assert.Equal(Place + "a Huffman table (DHT) is impossible: the table is empty." + Copy, Refusal(Table([], [])));
        Assert.Equal(
            Place + "a Huffman table (DHT) has a wrong place or length." + Copy,
            Refusal(jpeg => jpeg[TableAt + 4] = 4)
        );
        Assert.Equal(
            Place + "a Huffman table (DHT) is cut short." + Copy,
            Refusal([0xFF, 0xD8, 0xFF, 0xC4, 0, 5, 0, 0, 0, .. new byte[100]])
        );
    }

    [Fact]
    public void AnImpossibleScanHeaderIsRefused()
    {
        Assert.Equal(
            Place + "the JPEG scan header (SOS) does not match its frame header (SOF3)." + Copy,
            Refusal(jpeg => jpeg[ScanAt(jpeg) + 4] = 2)
        );
        Assert.Equal(
            Place + "the JPEG scan header (SOS) names other components than its frame header (SOF3)." + Copy,
            Refusal(jpeg => jpeg[ScanAt(jpeg) + 5] = 9)
        );
        Assert.Equal(
            Place + "the JPEG scan header (SOS) names a Huffman table that is missing." + Copy,
            Refusal(jpeg => jpeg[ScanAt(jpeg) + 6] = 0x10)
        );
        Assert.Equal(
            Place + "the JPEG scan header (SOS) asks for predictor 0 and a shift by 0 bits." + Copy,
            Refusal(jpeg => jpeg[ScanAt(jpeg) + 7] = 0)
        );
    }

    [Fact]
    public void DamagedSamplesAreNamedByTheirLine()
    {
        byte[] good = Good();
        Assert.Equal(
            Place + "the compressed samples are damaged in line 23 of the JPEG image: they end too early." + Copy,
            Refusal([.. good[..^8], 0xFF, 0xD9])
        );
        byte[] noCode = [.. good[..^2]];
        for (int at = ScanAt(good) + 10; at < noCode.Length; at++)
            // FF 00 stands for eight ones, and no code is all ones
            noCode[at] = (byte)((at - ScanAt(good)) % 2 == 0 ? 0xFF : 0);
        Assert.Equal(
            Place
                + "the compressed samples are damaged in line 0 of the JPEG image: a code is not in its table."
                + Copy,
            Refusal(noCode)
        );
        byte[] small = [.. good];
        small[FrameAt + 4] = 9;
        Assert.Equal(
            Place
                + "the compressed samples are damaged in line 0 of the JPEG image: a sample does not fit 9 bits."
                + Copy,
            Refusal(small)
        );
    }

    [Fact]
    public void RestartsThatAreMissingOrDoNotEndALineAreRefused()
    {
        byte[] good = Good(restartLines: 4);
        Assert.Equal("", Refusal(good));
        byte[] missing = [.. good];
        missing[missing.AsSpan().IndexOf(new byte[] { 0xFF, 0xD1 }) + 1] = 0xD3;
        Assert.Equal(
            Place
                + "the compressed samples are damaged in line 8 of the JPEG image: the restart marker FFD1 is missing."
                + Copy,
            Refusal(missing)
        );
        byte[] uneven = [.. good];
        uneven[uneven.AsSpan().IndexOf(new byte[] { 0xFF, 0xDD }) + 5]++;
        Assert.Equal(
            Place + "restarts every 129 samples do not fall on the ends of lines of 32." + Copy,
            Refusal(uneven)
        );
        byte[] cut = [.. good[..2], 0xFF, 0xDD, 0, 3, 1, .. good[2..]];
        Assert.Equal(Place + "the restart interval (DRI) is cut short." + Copy, Refusal(cut));
    }

    [Fact]
    public void TheFirstVersionOfDngFollowsDifferencesOfMinus32768BySixteenBits()
    {
        // Code 0 for 16 bits, code 10 for 0 bits. Middle 32768, then the difference −32768 with and without 16 bits
        // behind it.
        ushort[] samples = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
        byte[] header =
        [
            0xFF,
            0xD8,
            0xFF,
            0xC3,
            0,
            11,
            16,
            0,
            1,
            0,
            16,
            1,
            0,
            0x11,
            0,
            0xFF,
            0xC4,
            0,
            21,
            0,
            1,
            1,
            .. new byte[14],
            16,
            0,
            0xFF,
            0xDA,
            0,
            8,
            1,
            0,
            0,
            1,
            0,
            0,
        ];
        byte[] standard = [.. header, 0b0101_0101, 0b0101_0101, 0b0101_0101, 0b0101_0101, 0xFF, 0xD9];
        byte[] early =
        [
            .. header,
            0b0100_0000,
            0b0000_0000,
            0b0101_0101,
            0b0101_0101,
            0b0101_0101,
            0b0101_0101,
            0xFF,
            0xD9,
        ];
        Assert.Equal(samples, ReadOneLine(standard, [1, 1, 0, 0]));
        Assert.Equal(samples, ReadOneLine(early, [1, 0, 0, 0]));
    }

    private static ushort[] ReadOneLine(byte[] jpeg, byte[] version)
    {
        var frame = new DngFrame
        {
            Width = 16,
            Height = 1,
            BitsPerSample = 16,
            Samples = new ushort[16],
        };
        using var stream = new MemoryStream();
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries tags = file.NewDirectory();
        SegmentWriter.Write(file, tags, frame, new DngForm());
        DngTags.AddMosaic(tags, frame);
        tags.Bytes(SensorProfile.Raw.Containers.Tag.DNGVersion, SensorProfile.Raw.Containers.TiffType.Byte, version);
        tags.Shorts(SensorProfile.Raw.Containers.Tag.Compression, 7);
        tags.Longs(SensorProfile.Raw.Containers.Tag.StripOffsets, file.Append(jpeg));
        tags.Longs(SensorProfile.Raw.Containers.Tag.StripByteCounts, jpeg.Length);
        file.Finish(file.Append(tags));
        return TestFrames.Read(stream.ToArray());
    }

    /// <summary>A strip that begins with a Huffman table: codes of 1, 2, … bits and their values.</summary>
    private static byte[] Table(byte[] counts, byte[] values)
    {
        byte[] content = [0, .. counts, .. new byte[16 - counts.Length], .. values];
        return [0xFF, 0xD8, 0xFF, 0xC4, 0, (byte)(content.Length + 2), .. content, .. new byte[100]];
    }
}
