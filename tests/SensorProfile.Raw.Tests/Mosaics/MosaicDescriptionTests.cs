using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Mosaics;

/// <summary>Areas, levels, colours and curves are read as written; what makes no sense becomes a warning.</summary>
public sealed class MosaicDescriptionTests
{
    private static RawMosaic Read(byte[] bytes)
    {
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        return file.Mosaic;
    }

    [Fact]
    public void BordersAroundTheActiveAreaAreTakenForMaskedWhenTheFileNamesNone()
    {
        RawMosaic mosaic = Read(
            TestFrames.Bytes(EditedFile.Frame with { ActiveArea = new RawArea(2, 3, 24, 30) }, new DngForm())
        );
        Assert.False(mosaic.MaskedAreasAreNamed);
        Assert.Equal(
            [new RawArea(0, 0, 2, 32), new RawArea(2, 0, 24, 3), new RawArea(2, 30, 24, 32)],
            mosaic.MaskedAreas
        );
        Assert.Equal((27, 22), (mosaic.Width, mosaic.Height));
    }

    [Fact]
    public void MaskedAreasThatTheFileNamesAreTaken()
    {
        RawMosaic mosaic = Read(
            TestFrames.Bytes(
                EditedFile.Frame with
                {
                    ActiveArea = new RawArea(2, 4, 24, 32),
                    MaskedAreas = [new RawArea(2, 0, 24, 3)],
                },
                new DngForm()
            )
        );
        Assert.True(mosaic.MaskedAreasAreNamed);
        Assert.Equal([new RawArea(2, 0, 24, 3)], mosaic.MaskedAreas);
    }

    [Fact]
    public void TheBlackLevelIsPatternPlusColumnPlusRow()
    {
        var black = new RawBlackLevel
        {
            PatternRows = 2,
            PatternColumns = 2,
            Pattern = [64, 65.5, 66, 67.25],
            ColumnOffsets = [.. Enumerable.Range(0, 32).Select(c => c / 8.0)],
            RowOffsets = [.. Enumerable.Range(0, 24).Select(r => -r / 4.0)],
        };
        RawBlackLevel read = Read(
            TestFrames.Bytes(EditedFile.Frame with { BlackLevel = black }, new DngForm())
        ).BlackLevel!;
        Assert.Equal(black.Pattern, read.Pattern);
        Assert.Equal(67.25 + (5 / 8.0) - (3 / 4.0), read.At(3, 5));
        Assert.Equal(64 + (30 / 8.0) - (22 / 4.0), read.At(22, 30));
    }

    [Fact]
    public void AMonochromeSensorHasNoColourFilter()
    {
        RawMosaic mosaic = Read(TestFrames.Bytes(EditedFile.Frame with { ColourFilter = null }, new DngForm()));
        Assert.Null(mosaic.ColourFilter);
        Assert.Equal(4095, mosaic.WhiteLevel);
    }

    [Theory]
    [InlineData("RGGB"), InlineData("GRBG"), InlineData("GBRG"), InlineData("BGGR")]
    public void TheColourFilterCountsFromTheActiveArea(string name)
    {
        RawColour[] c =
        [
            .. name.Select(letter =>
                letter switch
                {
                    'R' => RawColour.Red,
                    'G' => RawColour.Green,
                    _ => RawColour.Blue,
                }
            ),
        ];
        RawMosaic mosaic = Read(
            TestFrames.Bytes(
                EditedFile.Frame with
                {
                    ColourFilter = new RawColourFilter(c[0], c[1], c[2], c[3]),
                    ActiveArea = new RawArea(1, 1, 24, 32),
                },
                new DngForm()
            )
        );
        Assert.Equal(name, mosaic.ColourFilter!.Name);
        Assert.Equal(
            c,
            [
                mosaic.ColourFilter.At(0, 0),
                mosaic.ColourFilter.At(2, 1),
                mosaic.ColourFilter.At(1, 2),
                mosaic.ColourFilter.At(7, 9),
            ]
        );
    }

    [Fact]
    public void ACurveIsNamedAndCanBeUndone()
    {
        ushort[] table =
        [
            .. Enumerable.Range(0, 4096).Select(code => (ushort)(code < 1024 ? code : 1024 + ((code - 1024) * 5))),
        ];
        byte[] bytes = TestFrames.Bytes(EditedFile.Frame with { LinearisationTable = table }, new DngForm());
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        Assert.Equal(5, file.Mosaic.Linearisation!.LargestStep);
        ushort[] samples = [0, 1023, 1025, 4095, 65535];
        file.Mosaic.Linearisation.Apply(samples);
        Assert.Equal([0, 1023, 1029, 16379, 16379], samples);
        Assert.Equal(
            [
                "curved-codes test.dng, directory 0, tag LinearizationTable (50712), byte N: the stored codes follow "
                    + "a curve with steps of up to 5 linear codes: their noise is not that of the sensor's converter.",
            ],
            EditedFile.Warnings(bytes)
        );
        Assert.Equal(
            [new RawTreatment(RawTreatmentKind.CurvedCodes, "LinearizationTable: 4096 codes, steps of up to 5")],
            file.Facts.Treatments
        );
        Assert.Equal(EditedFile.Frame.Samples.ToArray(), TestFrames.Read(bytes)); // handed out as stored
    }

    [Fact] // as some cameras compress: 8 bits that a table widens
    public void EightBitsWithATableAreACurveHandedOutAsStored()
    {
        ushort[] table = [.. Enumerable.Range(0, 256).Select(code => (ushort)(code * code / 16))];
        DngFrame frame = TestFrames.Noisy(32, 24, 8) with { LinearisationTable = table };
        byte[] bytes = TestFrames.Bytes(frame, new DngForm());
        Assert.Equal(frame.Samples.ToArray(), TestFrames.Read(bytes));
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        Assert.Equal((8, 32), (file.Storage.BitsPerSample, file.Mosaic.Linearisation!.LargestStep));
        Assert.Equal(RawTreatmentKind.CurvedCodes, Assert.Single(file.Facts.Treatments).Kind);
    }

    [Fact]
    public void SeveralMaskedAreasComeInTheirOrder()
    {
        RawArea[] areas = [new(0, 0, 2, 32), new(2, 0, 24, 3), new(2, 30, 24, 32)];
        RawMosaic mosaic = Read(
            TestFrames.Bytes(
                EditedFile.Frame with
                {
                    ActiveArea = new RawArea(2, 4, 24, 30),
                    MaskedAreas = areas,
                },
                new DngForm()
            )
        );
        Assert.Equal(areas, mosaic.MaskedAreas);
    }

    [Fact]
    public void WhatAConverterMakesOfTheCodesChangesNoCode()
    {
        const int baselineExposure = 50730;
        byte[] bytes = EditedFile.Bytes(tags => tags.Fractions((Tag)baselineExposure, true, new Fraction(-3, 2)));
        Assert.Equal(EditedFile.Frame.Samples.ToArray(), TestFrames.Read(bytes));
        Assert.Empty(EditedFile.Warnings(bytes));
    }

    [Fact]
    public void ATableThatChangesNothingIsNoCurve() =>
        Assert.Null(
            Read(
                TestFrames.Bytes(
                    EditedFile.Frame with
                    {
                        LinearisationTable = [.. Enumerable.Range(0, 4096).Select(code => (ushort)code)],
                    },
                    new DngForm()
                )
            ).Linearisation
        );

    [Fact]
    public void TheDefaultCropIsRoundedInwards()
    {
        byte[] bytes = EditedFile.Bytes(tags =>
        {
            tags.Fractions(Tag.DefaultCropOrigin, false, new Fraction(5, 2), new Fraction(2, 1));
            tags.Fractions(Tag.DefaultCropSize, false, new Fraction(20, 1), new Fraction(18, 1));
        });
        Assert.Equal(new RawArea(2, 3, 20, 22), Read(bytes).DefaultCrop);
    }

    [Fact]
    public void LevelsThatMakeNoSenseArePassedOverWithAWarning()
    {
        const string place = "meaningless-tag test.dng, directory 0, tag ";
        byte[] bytes = EditedFile.Bytes(tags =>
        {
            tags.Shorts(Tag.BlackLevelRepeatDim, 2, 2);
            tags.Shorts(Tag.BlackLevel, 64, 64, 64);
            tags.Fractions(Tag.BlackLevelDeltaH, true, new Fraction(1, 2));
            tags.Fractions(Tag.BlackLevelDeltaV, true, new Fraction(1, 0));
            tags.Longs(Tag.MaskedAreas, 0, 0, 99, 99);
            tags.Longs(Tag.DefaultCropOrigin, 0, 0);
            tags.Longs(Tag.DefaultCropSize, 99, 99);
        });
        Assert.Equal(
            [
                place + "MaskedAreas (50830), byte N: an area does not lie within the mosaic. The tag was ignored.",
                place
                    + "DefaultCropSize (50720), byte N: the crop does not lie within the active area. The tag was ignored.",
                place + "BlackLevelDeltaH (50715), byte N: expected 32 offsets, found 1. The tag was ignored.",
                place + "BlackLevelDeltaV (50716), byte N: a value is not finite. The tag was ignored.",
                place + "BlackLevel (50714), byte N: a pattern of 2 × 2 does not fit 3 levels. The tag was ignored.",
            ],
            EditedFile.Warnings(bytes)
        );
    }

    [Fact]
    public void TheLargestOfSeveralMosaicsIsTakenAndSeveralExposuresAreNamed()
    {
        byte[] bytes = TestFrames.Bytes(EditedFile.Frame, new DngForm());
        int first = BitConverter.ToInt32(bytes, 4);
        int length = 2 + (12 * BitConverter.ToInt16(bytes, first)) + 4;
        byte[] twice = [.. bytes, .. bytes[first..(first + length)]];
        BitConverter.TryWriteBytes(twice.AsSpan(first + length - 4), bytes.Length);
        Assert.Equal(
            [
                "several-mosaics test.dng: the file holds 2 mosaics of full resolution (several exposures in one "
                    + "file); the first was taken.",
            ],
            EditedFile.Warnings(twice)
        );
        using RawFile file = RawFile.Open(new MemoryBytes(twice));
        Assert.Equal(2, file.Storage.Exposures);
    }

    [Fact]
    public void TwelveBitsInSixteenBitNumbersAreKnownByTheLengthOfTheStrip()
    {
        byte[] bytes = EditedFile.Bytes(tags => tags.Shorts(Tag.BitsPerSample, 12));
        Assert.Equal(EditedFile.Frame.Samples.ToArray(), TestFrames.Read(bytes));
    }

    [Fact]
    public void ATiffMosaicWithoutDngVersionIsTiffEp()
    {
        using RawFile file = RawFile.Open(new MemoryBytes(EditedFile.Bytes(tags => tags.Without(Tag.DNGVersion))));
        Assert.Equal((RawContainer.TiffEp, null), (file.Storage.Container, file.Storage.DngVersion));
    }
}
