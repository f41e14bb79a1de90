using System.Text;
using SensorProfile.Drift.Archive;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Tests.Drift.Archive;

/// <summary>An archive's list of hot pixels that somebody or something has spoilt.</summary>
public sealed class HotPixelListFileTests
{
    private const string Header = "x,y,rate,rate_uncertainty,doubling,flickers\r\n";

    [Fact]
    public void AGoodListIsRead()
    {
        ListedRates rates = Parse(Notes(), Header + "2,1,0.5,0.01,6.5,0\r\n4,3,0.75,0.02,,1\r\n");
        Assert.Equal([1, 11], rates.Above(0.4));
        Assert.Equal((0.5f, 0.01f, 6.5), (rates.At(1).Rate, (float)rates.At(1).Uncertainty, rates.Doubling(1)));
        Assert.True(rates.Flickers(11) && double.IsNaN(rates.Doubling(11)));
    }

    [Theory]
    [InlineData("\"width\": 4", "\"width\": -4", "n.json says -4 × 3 px, which no sensor has")]
    [InlineData("\"height\": 3", "\"height\": 0", "n.json says 4 × 0 px, which no sensor has")]
    [InlineData("\"width\": 4", "\"width\": 2000000000", "n.json says 2000000000 × 3 px, which no sensor has")]
    [InlineData(
        "\"pixels\": 2",
        "\"pixels\": -2",
        "l.csv holds 2 pixels, but hot-pixels.json says -2: it is incomplete or was changed"
    )]
    public void SizesThatNoSensorHasAreRefused(string text, string instead, string message) =>
        Assert.Equal(
            message,
            Assert
                .Throws<InvalidDataException>(() =>
                    Parse(
                        Notes().Replace(text, instead, StringComparison.Ordinal),
                        Header + "2,1,0.5,0.01,6.5,0\r\n4,3,0.75,0.02,,1\r\n"
                    )
                )
                .Message
        );

    [Theory]
    [InlineData("2,1,NaN,0.01,6.5,0")]
    [InlineData("2,1,Infinity,0.01,6.5,0")]
    [InlineData("2,1,1e39,0.01,6.5,0")]
    [InlineData("2,1,0.5,-0.01,6.5,0")]
    public void RatesThatAreNoNumbersAreRefused(string row) =>
        Assert.Equal(
            "l.csv, line 2: the pixel 2, 1 has no finite rate or uncertainty",
            Assert.Throws<InvalidDataException>(() => Parse(Notes(), Header + row + "\r\n4,3,0.75,0.02,,1\r\n")).Message
        );

    [Theory]
    [InlineData("\"width\": 4", "\"width\": 4, \"width\": 5", "n.json, line 1, $.width: this name is given twice")]
    [InlineData("\"floor\": 0.4", "\"floor\": 1e999", "n.json, line 1, $.floor: the number is too large")]
    public void NotesThatSayItTwiceOrBeyondMeasureAreRefused(string text, string instead, string start) =>
        Assert.StartsWith(
            start,
            Assert
                .Throws<ProfileFormatException>(() =>
                    Parse(Notes().Replace(text, instead, StringComparison.Ordinal), Header)
                )
                .Message,
            StringComparison.Ordinal
        );

    private static string Notes() =>
        """{ "format": "hot pixels of a camera sensor", "version": 1, "width": 4, "height": 3, "typicalRate": 0.1, """
        + """ "referenceTemperature": -10, "floor": 0.4, "pixels": 2 }""";

    private static ListedRates Parse(string notes, string list)
    {
        using var text = new StringReader(list);
        return HotPixelListFile.Parse(text, Encoding.UTF8.GetBytes(notes), "l.csv", "n.json");
    }
}
