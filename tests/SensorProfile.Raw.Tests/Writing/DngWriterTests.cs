using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Writing;

/// <summary>What cannot be written is refused before anything is; what is there is not replaced unasked.</summary>
public sealed class DngWriterTests
{
    [Fact]
    public void AFileThatIsThereIsNotReplacedUnasked()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("a.dng");
        DngWriter.Write(path, EditedFile.Frame);
        Assert.Equal(
            $"{path} exists and was not replaced.",
            Assert.Throws<IOException>(() => DngWriter.Write(path, EditedFile.Frame)).Message
        );
        DngWriter.Write(path, EditedFile.Frame, overwrite: true);
        Assert.Equal([path], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void TheSameFrameGivesTheSameBytes() =>
        Assert.All(TestFrames.Forms.Values, form =>
            Assert.Equal(TestFrames.Bytes(EditedFile.Frame, form), TestFrames.Bytes(EditedFile.Frame, form))
        );

    [Fact]
    public void FramesThatContradictThemselvesAreRefused()
    {
        Refused(EditedFile.Frame with { Height = 25 }, new DngForm(), "768 samples do not make 32 × 25.");
        Refused(EditedFile.Frame with { BitsPerSample = 7 }, new DngForm(), "A sample has 8 to 16 bits, not 7.");
        Refused(
            EditedFile.Frame with
            {
                BitsPerSample = 11,
            },
            new DngForm(),
            "A sample is larger than 2047, the most that 11 bits hold."
        );
    }

    [Fact]
    public void FormsThatCannotBeAreRefused()
    {
        Refused(EditedFile.Frame, new DngForm { Compression = RawCompression.Lzw }, "DNG has no LZW.");
        Refused(EditedFile.Frame, new DngForm { TileSide = 20 }, "The side of a tile is a multiple of 16, not 20.");
        Refused(
            EditedFile.Frame,
            new DngForm { DifferenceDistance = 3 },
            "A difference goes back 1, 2 or 4 columns, not 3."
        );
        DngForm jpeg = new() { Compression = RawCompression.LosslessJpeg };
        Refused(EditedFile.Frame, jpeg with { JpegPredictor = 8 }, "Lossless JPEG has predictors 1 to 7, not 8.");
        Refused(
            EditedFile.Frame,
            jpeg with
            {
                JpegComponents = 3,
            },
            "1 rows of 32 samples do not make a line of 3 components."
        );
        Refused(
            EditedFile.Frame,
            jpeg with
            {
                JpegRestartLines = 3_000,
            },
            "Restarts after 3000 lines are too far apart for lossless JPEG."
        );
        Refused(
            EditedFile.Frame,
            jpeg with
            {
                JpegRowsPerLine = 2,
                RowsPerStrip = 5,
            },
            "5 rows do not make lines of 2 rows."
        );
    }

    [Theory]
    [
        InlineData(0.0, 0, 1),
        InlineData(0.25, 1, 4),
        InlineData(-2.5, -5, 2),
        InlineData(300, 300, 1),
        InlineData(1.0 / 3, 1, 3),
        InlineData(0.001, 1, 1000)
    ]
    public void FractionsAreTheSimplestThatDivideOut(double value, long numerator, long denominator) =>
        Assert.Equal(new Fraction(numerator, denominator), Fraction.Of(value));

    [Fact]
    public void AnyNumberIsMatchedToNineDigits()
    {
        var random = new Random(4);
        for (int i = 0; i < 1000; i++)
        {
            double value = Math.Exp((random.NextDouble() * 18) - 9);
            Fraction fraction = Fraction.Of(value);
            // A convergent with a denominator up to D is off by less than 1/D²; here D or the numerator is above 2³¹/a
            // few.
            Assert.InRange((double)fraction.Numerator / fraction.Denominator, value * (1 - 1e-9), value * (1 + 1e-9));
        }
        Assert.Throws<ArgumentOutOfRangeException>(() => Fraction.Of(double.NaN));
    }

    private static void Refused(DngFrame frame, DngForm form, string message)
    {
        using var folder = new TemporaryFolder();
        ArgumentException problem = Assert.Throws<ArgumentException>(() =>
            DngWriter.Write(folder.File("a.dng"), frame, form)
        );
        Assert.StartsWith(message, problem.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }
}
