using System.Text;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits.Tests.Headers;

/// <summary>Headers made card by card: messages word for word, and oddities that are not in the zoo.</summary>
public sealed class HeaderTests
{
    private static readonly string[] Image =
    [
        "SIMPLE  =                    T",
        "BITPIX  =                   16",
        "NAXIS   =                    2",
        "NAXIS1  =                    2",
        "NAXIS2  =                    1",
    ];

    [Fact]
    public void AMessageNamesThePlaceWhatWasFoundAndTheWayOut()
    {
        var error = Refused([.. Image, "OBJECT  = 'dark    '", "EXPTIME =                 60.0", "BZERO   = abc"]);
        Assert.Equal(
            "dark_0012.fits, HDU 0, keyword BZERO, byte 560: expected a number, found 'abc'. Leave the file out, "
                + "or correct its header.",
            error.Message
        );
        Assert.Equal(
            "HDU 0, keyword BZERO, byte 560: expected a number, found 'abc'. Leave the file out, or correct its "
                + "header.",
            error.Statement
        );
        Assert.Equal(("BZERO", 560L, 0), (error.Location.Keyword, error.Location.ByteOffset, error.Location.Hdu));
        Assert.Equal(
            ("expected a number, found 'abc'.", "Leave the file out, or correct its header."),
            (error.Problem, error.Remedy)
        );
    }

    [Fact]
    public void ATruncatedFileSaysHowMuchIsMissing()
    {
        using var folder = new TemporaryFolder();
        byte[] bytes =
        [
            .. Bytes([
                "SIMPLE  =                    T",
                "BITPIX  =                   16",
                "NAXIS   =                    2",
                "NAXIS1  =                   20",
                "NAXIS2  =                   15",
            ]),
        ];
        File.WriteAllBytes(folder.File("a.fits"), bytes[..(2880 + 333)]);
        var error = Assert.Throws<FitsFormatException>(() => FitsFile.Open(folder.File("a.fits")));
        Assert.Equal(
            "a.fits, HDU 0, byte 3213: the file ends inside the data unit: 267 of 600 bytes are missing. Copy the "
                + "file again from its origin, or leave it out.",
            error.Message
        );
    }

    [Fact]
    public void AMalformedValueCountsAsNotGivenAndIsNoted()
    {
        using FitsFile file = Opened([.. Image, "CCD-TEMP= warm", "EXPTIME = 'unclosed"], out TemporaryFolder folder);
        using (folder)
        {
            Assert.Null(file.Hdus[0].Header.Number("CCD-TEMP"));
            Assert.Equal(
                ["CCD-TEMP", "EXPTIME"],
                file.Warnings.Where(w => w.Code == FitsWarningCodes.MalformedValue).Select(w => w.Location.Keyword)
            );
        }
    }

    [Fact]
    public void OfARepeatedKeywordTheFirstCountsAndItIsNoted()
    {
        using FitsFile file = Opened(
            [
                .. Image,
                "EXPTIME =                 60.0",
                "EXPTIME =                 30.0",
                "GAIN    = 1",
                "GAIN    = 1",
            ],
            out TemporaryFolder folder
        );
        using (folder)
        {
            Assert.Equal(60.0, file.Hdus[0].Header.Number("EXPTIME"));
            Assert.Equal("EXPTIME", Assert.Single(file.Warnings).Location.Keyword);
        }
    }

    [Fact]
    public void AValueWithoutTheBlankAfterTheEqualsSignIsNotLost()
    {
        using FitsFile file = Opened([.. Image, "BZERO   =32768"], out TemporaryFolder folder);
        using (folder)
            Assert.Equal(FitsPixelType.UInt16, file.Hdus[0].PixelType);
    }

    [Theory]
    [InlineData("NAXIS   =                   -1", "NAXIS", "expected 0 to 999, found '-1'.")]
    [InlineData("NAXIS   =                  2.0", "NAXIS", "expected an integer, found '2.0'.")]
    [InlineData("NAXIS   = 99999999999999999999", "NAXIS", "expected an integer, found '99999999999999999999'.")]
    public void AWrongAxisCountIsRefused(string card, string keyword, string problem)
    {
        var error = Refused([Image[0], Image[1], card, Image[3], Image[4]]);
        Assert.Equal((keyword, problem), (error.Location.Keyword, error.Problem));
    }

    [Fact]
    public void ABitpixBeyond32BitsIsNotTakenForOneThatFits() =>
        Assert.Equal("BITPIX", Refused([Image[0], "BITPIX  =           4294967312", .. Image[2..]]).Location.Keyword);

    [Fact]
    public void AnImageExtensionWithoutAxesButWithParametersHasNoPixels()
    {
        using var folder = new TemporaryFolder();
        byte[] odd = Bytes([
            "XTENSION= 'IMAGE   '",
            "BITPIX  =                    8",
            "NAXIS   =                    0",
            "PCOUNT  =                    5",
            "GCOUNT  =                    1",
        ]);
        File.WriteAllBytes(folder.File("a.fits"), [.. Bytes(Image), .. odd]);
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        Assert.Equal((FitsHduKind.NoData, false), (file.Hdus[1].Kind, file.Hdus[1].HasPixels));
    }

    [Fact]
    public void TheSecondHduMayBeBrokenAndTheFirstStillGivesItsPixels()
    {
        using var folder = new TemporaryFolder();
        byte[] broken = Bytes([
            "XTENSION= 'IMAGE   '",
            "BITPIX  =                    7",
            "NAXIS   =                    0",
        ]);
        File.WriteAllBytes(folder.File("a.fits"), [.. Bytes(Image), .. broken]);
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        file.RequireFirstImage().ReadRows(0, new int[2]);
        Assert.Equal(("BITPIX", 1), (Assert.Single(file.Errors).Location.Keyword, file.Errors[0].Location.Hdu));
        Assert.Equal(FitsWarningCodes.BrokenHdu, Assert.Single(file.Warnings).Code);
    }

    [Fact]
    public void AnImageBehindOneWithUnknownScalingIsStillFound()
    {
        using var folder = new TemporaryFolder();
        byte[] good = Bytes([
            "XTENSION= 'IMAGE   '",
            .. Image[1..],
            "PCOUNT  =                    0",
            "GCOUNT  =                    1",
        ]);
        File.WriteAllBytes(folder.File("a.fits"), [.. Bytes([.. Image, "BSCALE  = 'one     '"]), .. good]);
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        Assert.Equal(1, file.RequireFirstImage().Index);
        Assert.Single(file.Errors);
    }

    [Theory]
    [InlineData("1", true)]
    [InlineData("-1.5E+3", true)]
    [InlineData(".5", true)]
    [InlineData("5.", true)]
    [InlineData("6,4E-05", true)]
    [InlineData("1.5D3", true)]
    [InlineData("", false)]
    [InlineData(".", false)]
    [InlineData("-", false)]
    [InlineData("1E", false)]
    [InlineData("1.2.3", false)]
    [InlineData("1,234.5", false)]
    [InlineData("0x10", false)]
    [InlineData("NaN", false)]
    [InlineData("1 000", false)]
    public void NumbersAreRecognised(string text, bool number) =>
        Assert.Equal(number, CardNumber.Parse(text) is not null);

    [Fact]
    public void NumbersDoNotDependOnTheCulture()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal((1234.5, -10.5), (CardNumber.Parse("1.2345E3"), CardNumber.Parse("-10,5")));
            Assert.Equal("0.25", FitsCard.Of("A", 0.25).Value);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void OddAndMissingFilesAreRefusedClearly()
    {
        using var folder = new TemporaryFolder();
        Assert.Throws<FileNotFoundException>(() => FitsFile.Open(folder.File("none.fits")));
        File.WriteAllBytes(
            folder.File("a.fits"),
            Bytes([
                "SIMPLE  =                    T",
                "BITPIX  =                    8",
                "NAXIS   =                    0",
            ])[..2880]
        );
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        Assert.Equal(
            "a.fits: the file holds no image with two axes. Leave it out.",
            Assert.Throws<FitsFormatException>(() => file.RequireFirstImage()).Message
        );
        Assert.Equal(
            "The file holds no image with two axes. Leave it out.",
            Assert.Throws<FitsFormatException>(() => file.RequireFirstImage()).Statement
        );
        Assert.Throws<InvalidOperationException>(() => file.Hdus[0].ReadRows(0, new ushort[1]));
    }

    private static FitsFormatException Refused(string[] cards)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder.File("dark_0012.fits"), Bytes(cards));
        return Assert.Throws<FitsFormatException>(() => FitsFile.Open(folder.File("dark_0012.fits")));
    }

    private static FitsFile Opened(string[] cards, out TemporaryFolder folder)
    {
        folder = new TemporaryFolder();
        File.WriteAllBytes(folder.File("a.fits"), Bytes(cards));
        return FitsFile.Open(folder.File("a.fits"));
    }

    /// <summary>A header block and one block of zeros as data.</summary>
    private static byte[] Bytes(string[] cards) =>
        [
            .. Encoding.ASCII.GetBytes(
                string.Concat(cards.Append("END").Select(card => card.PadRight(80))).PadRight(2880)
            ),
            .. new byte[2880],
        ];
}
