using SensorProfile.Frames.Headers;

namespace SensorProfile.Tests.Frames.Headers;

public class FilterPatternTests
{
    [Theory]
    [InlineData("RGGB", 0, 0, false, 100, "RGGB")]
    [InlineData("RGGB", 1, 0, false, 100, "GRBG")]
    [InlineData("RGGB", 0, 1, false, 100, "GBRG")]
    [InlineData("RGGB", 1, 1, false, 100, "BGGR")]
    [InlineData("RGGB", -1, 2, false, 100, "GRBG")]
    // an upside-down file of even height begins with the second filter row
    [InlineData("RGGB", 0, 0, true, 100, "GBRG")]
    [InlineData("RGGB", 0, 0, true, 101, "RGGB")]
    [InlineData("RGGB", 1, 1, true, 100, "GRBG")]
    [InlineData("GRBG", 0, 0, true, 2, "BGGR")]
    public void TheFileBeginsWithThisRow(string pattern, int x, int y, bool bottomUp, int height, string expected) =>
        Assert.Equal(expected, FilterPattern.InFileOrder(pattern, x, y, bottomUp, height));

    /// <summary>
    /// A picture is coloured pixel by pixel, stored upside down, and the first two file rows are looked at.
    /// </summary>
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public void AnUpsideDownFileAgreesWithThePicture(int height)
    {
        const string pattern = "RGGB";
        char[][] picture =
        [
            .. Enumerable
                .Range(0, height)
                .Select(row =>
                    Enumerable.Range(0, 4).Select(column => pattern[(row + 1) % 2 * 2 + column % 2]).ToArray()
                ),
        ];
        char[][] file = [.. picture.Reverse()];
        string expected = new([file[0][0], file[0][1], file[1][0], file[1][1]]);
        Assert.Equal(expected, FilterPattern.InFileOrder(pattern, xOffset: 0, yOffset: 1, bottomUp: true, height));
    }

    [Theory]
    [InlineData("rggb", null, "RGGB")]
    [InlineData(null, "GRBG", "GRBG")]
    [InlineData("GRBG", "RAW16", "GRBG")]
    [InlineData(null, "RAW16", null)]
    [InlineData(null, "RGB24", null)]
    [InlineData("MONO", null, null)]
    public void HeadersSayItInTwoPlaces(string? bayer, string? colour, string? expected)
    {
        List<HeaderIssue> issues = [];
        Assert.Equal(expected, FilterPattern.Read(Header(("BAYERPAT", bayer), ("COLORTYP", colour)), 100, issues));
        Assert.Empty(issues);
    }

    [Fact]
    public void OffsetsAndRowOrderAreApplied() =>
        Assert.Equal(
            "GRBG",
            FilterPattern.Read(
                Header(("BAYERPAT", "RGGB"), ("XBAYROFF", "1"), ("YBAYROFF", "1"), ("ROWORDER", "BOTTOM-UP")),
                100,
                []
            )
        );

    [Fact]
    public void APatternThatIsNoneBecomesAnIssue()
    {
        List<HeaderIssue> issues = [];
        Assert.Null(FilterPattern.Read(Header(("BAYERPAT", "RRRR")), 100, issues));
        Assert.Equal([new HeaderIssue(FindingCodes.ColourFilterUnreadable, "BAYERPAT = 'RRRR'")], issues);
    }

    private static KeywordValues Header(params (string Keyword, string? Value)[] cards) =>
        new(cards.Where(c => c.Value is not null).Select(c => KeyValuePair.Create(c.Keyword, c.Value!)));
}
