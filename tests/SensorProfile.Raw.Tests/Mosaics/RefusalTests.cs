using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Mosaics;

/// <summary>
/// What is not a mosaic, or one that this reader does not know, is refused with the reason and a way out.
/// </summary>
public sealed class RefusalTests
{
    private const string Place = "test.dng, directory 0, tag ";
    private const string Copy = " Copy the file again from the card, or leave it out.";
    private const string Convert = " Convert it to DNG with lossless compression or none.";
    private const string OtherProgram =
        " Leave it out: only sensors with a filter of red, green and blue in 2 × 2 pixels, or with none, can be measured "
        + "here.";

    public static TheoryData<string, string> SingleNumbers =>
        new()
        {
            {
                "Compression=34892",
                "Compression (259), byte N: the samples are compressed with loss (lossy DNG): what is left of "
                    + "their noise is not the sensor's. Convert the original raw file again without lossy compression."
            },
            {
                "Compression=52546",
                "Compression (259), byte N: the samples are compressed in a way that this reader does not know "
                    + "(JPEG XL)."
                    + Convert
            },
            {
                "Compression=6",
                "Compression (259), byte N: the samples are compressed in a way that this reader does not know "
                    + "(JPEG in its old form, as some makers' raw files have it)."
                    + Convert
            },
            {
                "Compression=32773",
                "Compression (259), byte N: the samples are compressed in a way that this reader does not know "
                    + "(PackBits)."
                    + Convert
            },
            {
                "Compression=34713",
                "Compression (259), byte N: the samples are compressed in a way that this reader does not know "
                    + "(compression 34713, a maker's own)."
                    + Convert
            },
            {
                "BitsPerSample=32",
                "BitsPerSample (258), byte N: expected 8 to 16 bits per sample, found 32." + Convert
            },
            {
                "SampleFormat=3",
                "SampleFormat (339), byte N: expected unsigned whole numbers, found floating-point numbers: the "
                    + "samples were computed. Leave it out, or give the frame as the camera wrote it."
            },
            {
                "SampleFormat=2",
                "SampleFormat (339), byte N: expected unsigned whole numbers, found signed ones: the samples were "
                    + "computed. Leave it out, or give the frame as the camera wrote it."
            },
            {
                "SampleFormat=6",
                "SampleFormat (339), byte N: expected unsigned whole numbers, found numbers of another kind: the "
                    + "samples were computed. Leave it out, or give the frame as the camera wrote it."
            },
            {
                "FillOrder=2",
                "FillOrder (266), byte N: expected the highest bit of a byte first (1), found 2." + Convert
            },
            {
                "SamplesPerPixel=3",
                "SamplesPerPixel (277), byte N: expected 1 sample per pixel of a mosaic, found 3. Convert the "
                    + "original raw file again."
            },
            {
                "RowInterleaveFactor=2",
                "RowInterleaveFactor (50975), byte N: the mosaic is stored as 2 smaller ones, which this reader "
                    + "does not put together. Convert it to DNG without interleaving."
            },
            {
                "ColumnInterleaveFactor=3",
                "ColumnInterleaveFactor (52547), byte N: the mosaic is stored as 3 smaller ones, which this "
                    + "reader does not put together. Convert it to DNG without interleaving."
            },
            {
                "CFALayout=2",
                "CFALayout (50711), byte N: the pixels lie in staggered rows or columns (layout 2), not in a "
                    + "rectangle."
                    + OtherProgram
            },
            { "RowsPerStrip=0", "RowsPerStrip (278), byte N: expected at least 1 row, found 0." + Copy },
            { "ImageWidth=0", "ImageWidth (256), byte N: expected a number from 1 to 65535, found 0." + Copy },
            {
                "ImageWidth=33",
                "StripByteCounts (279), byte N: strip 0 of 33 × 24 samples needs at least 1584 bytes, found 1536."
                    + Copy
            },
            {
                "RowsPerStrip=5",
                "StripOffsets (273), byte N: 32 × 24 samples in pieces of 32 × 5 need 5 values, found 1." + Copy
            },
        };

    [Theory, MemberData(nameof(SingleNumbers))]
    public void ATagOfOneNumberThatCannotBeIsNamed(string change, string expected)
    {
        string[] parts = change.Split('=');
        byte[] bytes = EditedFile.Bytes(tags =>
            tags.Shorts(
                Enum.Parse<Tag>(parts[0]),
                int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture)
            )
        );
        Assert.Equal(Place + expected, EditedFile.Refusal(bytes));
    }

    [Theory] // floating-point DNG: half, 24 and 32 bits
    [InlineData(16)]
    [InlineData(24)]
    [InlineData(32)]
    public void FloatingPointSamplesAreNamedWhateverTheirBits(int bits) =>
        Assert.Contains(
            "expected unsigned whole numbers, found floating-point numbers: the samples were computed.",
            EditedFile.Refusal(
                EditedFile.Bytes(tags =>
                {
                    tags.Shorts(Tag.BitsPerSample, bits);
                    tags.Shorts(Tag.SampleFormat, 3);
                })
            ),
            StringComparison.Ordinal
        );

    [Fact] // DNG 1.7 in JPEG XL
    public void ANewDngInJpegXlIsNamed() =>
        Assert.Contains(
            "(JPEG XL)",
            EditedFile.Refusal(
                EditedFile.Bytes(tags =>
                {
                    tags.Bytes(Tag.DNGVersion, TiffType.Byte, 1, 7, 0, 0);
                    tags.Shorts(Tag.Compression, 52546);
                })
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void AMissingTagIsNamed() =>
        Assert.Equal(
            Place + "ImageLength (257), byte N: the tag is missing." + Copy,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Without(Tag.ImageLength)))
        );

    [Fact]
    public void AMosaicThatNoCameraHasIsTooLarge()
    {
        byte[] bytes = EditedFile.Bytes(tags =>
        {
            tags.Longs(Tag.ImageWidth, 65_000);
            tags.Longs(Tag.ImageLength, 65_000);
        });
        Assert.Equal(
            Place
                + "ImageLength (257), byte N: 65000 × 65000 samples are more than the 400000000 that this reader "
                + "takes. Check the file with the program that made it.",
            EditedFile.Refusal(bytes)
        );
    }

    [Fact]
    public void TooManyTilesAreRefusedBeforeTheyAreRead()
    {
        byte[] bytes = EditedFile.Bytes(
            tags =>
            {
                tags.Longs(Tag.ImageWidth, 16_000);
                tags.Longs(Tag.ImageLength, 16_000);
            },
            new DngForm { TileSide = 16 }
        );
        Assert.Equal(
            Place
                + "TileOffsets (324), byte N: 1000000 strips or tiles are more than the 65536 that this reader "
                + "takes. Check the file with the program that made it.",
            EditedFile.Refusal(bytes)
        );
    }

    [Fact]
    public void AStripBeyondTheEndOfTheFileIsNamed()
    {
        byte[] bytes = EditedFile.Bytes(tags => tags.Longs(Tag.StripOffsets, 5_000));
        Assert.Equal(
            Place
                + "StripOffsets (273), byte N: strip 0 stands at bytes 5000 to 6535, but the file ends after "
                + $"{bytes.Length} bytes."
                + Copy,
            EditedFile.Refusal(bytes)
        );
    }

    [Fact]
    public void ANegativeOffsetOfASignedTypeIsNamed()
    {
        byte[] bytes = EditedFile.Bytes(tags => tags.Bytes(Tag.StripOffsets, TiffType.SignedByte, 0x8C));
        Assert.Equal(
            Place
                + "StripOffsets (273), byte N: strip 0 stands at bytes -116 to 1419, but the file ends after "
                + $"{bytes.Length} bytes."
                + Copy,
            EditedFile.Refusal(bytes)
        );
    }

    [Fact]
    public void AColourFilterThatIsNotOfTwoByTwoIsNamed()
    {
        Assert.Equal(
            Place
                + "CFARepeatPatternDim (33421), byte N: the colour filter repeats every 6 × 6 pixels; this reader "
                + "knows 2 × 2."
                + OtherProgram,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Shorts(Tag.CFARepeatPatternDim, 6, 6)))
        );
        Assert.Equal(
            Place
                + "CFARepeatPatternDim (33421), byte N: the file does not say after how many pixels its colour filter repeats."
                + Copy,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Without(Tag.CFARepeatPatternDim)))
        );
    }

    [Fact]
    public void OtherColoursThanRedGreenAndBlueAreNamed()
    {
        Assert.Equal(
            Place
                + "CFAPattern (33422), byte N: expected a filter of red, green and blue, found cyan, magenta, "
                + "yellow, white."
                + OtherProgram,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Bytes(Tag.CFAPattern, TiffType.Byte, 3, 4, 5, 6)))
        );
        Assert.Equal(
            Place
                + "CFAPattern (33422), byte N: expected a filter of red, green and blue, found red, green, blue, "
                + "colour 9."
                + OtherProgram,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Bytes(Tag.CFAPattern, TiffType.Byte, 0, 1, 2, 9)))
        );
        Assert.Equal(
            Place
                + "CFAPattern (33422), byte N: expected a filter of red, green and blue, found 3 colours."
                + OtherProgram,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Bytes(Tag.CFAPattern, TiffType.Byte, 0, 1, 2)))
        );
    }

    [Fact]
    public void AnActiveAreaOutsideTheMosaicIsNamed() =>
        Assert.Equal(
            Place
                + "ActiveArea (50829), byte N: expected top, left, bottom and right within 32 × 24 samples, found 0 0 25 32."
                + Copy,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Longs(Tag.ActiveArea, 0, 0, 25, 32)))
        );

    [Fact]
    public void DifferencesThatThisReaderDoesNotKnowAreNamed()
    {
        var deflate = new DngForm { Compression = RawCompression.Deflate };
        Assert.Equal(
            Place + "Predictor (317), byte N: expected whole-number differences, found predictor 3." + Convert,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Shorts(Tag.Predictor, 3), deflate))
        );
        byte[] twelveBits = EditedFile.Bytes(
            tags =>
            {
                tags.Shorts(Tag.Predictor, 2);
                tags.Shorts(Tag.BitsPerSample, 12);
            },
            deflate
        );
        Assert.Equal(
            Place
                + "Predictor (317), byte N: differences of 12-bit samples are a coding that this reader does not know."
                + Convert,
            EditedFile.Refusal(twelveBits)
        );
    }

    [Fact]
    public void ALaterMainVersionOfDngIsNamed() =>
        Assert.Equal(
            Place
                + "DNGVersion (50706), byte N: expected DNG 1.0 to 1.7, found version 2.0.0.0. Convert it to an earlier version of DNG.",
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Bytes(Tag.DNGVersion, TiffType.Byte, 2, 0, 0, 0)))
        );

    [Fact]
    public void DemosaicedFilesAreRefused()
    {
        byte[] linear = EditedFile.Bytes(tags =>
        {
            tags.Shorts(Tag.PhotometricInterpretation, 34892);
            tags.Shorts(Tag.SamplesPerPixel, 3);
        });
        Assert.Equal(
            Place
                + "PhotometricInterpretation (262), byte N: the samples are demosaiced (3 colours in every pixel): "
                + "their noise is not the sensor's. Convert the original raw file without demosaicing.",
            EditedFile.Refusal(linear)
        );
        byte[] picture = EditedFile.Bytes(tags => tags.Shorts(Tag.PhotometricInterpretation, 2));
        Assert.Equal(
            Place
                + "PhotometricInterpretation (262), byte N: the file holds a finished picture with three colours in "
                + "every pixel, no samples of a sensor. Take the raw file from the camera.",
            EditedFile.Refusal(picture)
        );
        Assert.Equal(RawRefusal.Demosaiced, EditedFile.Refused(picture)!.Refusal);
    }

    [Fact]
    public void AFileWithPreviewsAloneHoldsNoMosaic()
    {
        string refusal = EditedFile.Refusal(EditedFile.Bytes(tags => tags.Longs(Tag.NewSubfileType, 1)));
        Assert.Equal(
            "test.dng: no directory of the file describes samples of a sensor: it is a picture, or a maker's own "
                + "raw format. If it is a raw file, convert it to DNG.",
            refusal
        );
    }

    [Fact]
    public void PlainTiffOfEightBitsOrInvertedIsRefused()
    {
        void Plain(TiffEntries tags, int photometric, int bits)
        {
            tags.Shorts(Tag.PhotometricInterpretation, photometric);
            tags.Shorts(Tag.BitsPerSample, bits);
            tags.Without(Tag.DNGVersion);
        }
        Assert.Equal(
            Place
                + "BitsPerSample (258), byte N: expected 16 bits per sample, found 8: the sensor's codes are not in "
                + "this file. Save the frame with 16 bits, or take the raw file.",
            EditedFile.Refusal(EditedFile.Bytes(tags => Plain(tags, 1, 8)))
        );
        Assert.Equal(
            Place
                + "PhotometricInterpretation (262), byte N: light is stored as dark (WhiteIsZero). Save the frame with 0 for dark.",
            EditedFile.Refusal(EditedFile.Bytes(tags => Plain(tags, 0, 16)))
        );
        Assert.Equal("", EditedFile.Refusal(EditedFile.Bytes(tags => Plain(tags, 1, 16))));
    }

    [Fact]
    public void ALinearisationTableBeyondSixteenBitsIsRefused() =>
        Assert.Equal(
            Place + "LinearizationTable (50712), byte N: expected codes from 0 to 65535." + Copy,
            EditedFile.Refusal(EditedFile.Bytes(tags => tags.Longs(Tag.LinearizationTable, 0, 65_536)))
        );
}
