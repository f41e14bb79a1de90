using System.Globalization;
using SensorProfile.Frames.Headers;

namespace SensorProfile.Tests.Frames.Headers;

public class StartTimeTests
{
    [Theory]
    [InlineData("2024-04-18T14:14:04.649", null, "2024-04-18T14:14:04.649Z", false)]
    [InlineData("2024-04-18T14:14:04.1234567", null, "2024-04-18T14:14:04.1234567Z", false)]
    [InlineData("2024-04-18T14:14:04,5", null, "2024-04-18T14:14:04.5Z", false)]
    [InlineData("2024-04-18T14:14:04Z", null, "2024-04-18T14:14:04Z", false)]
    [InlineData("2024-04-18T14:14:04+02:00", null, "2024-04-18T12:14:04Z", false)]
    [InlineData("2024-04-18T14:14:04-0730", null, "2024-04-18T21:44:04Z", false)]
    [InlineData("2024-04-18 14:14", null, "2024-04-18T14:14:00Z", false)]
    [InlineData("2024-04-18", null, "2024-04-18T00:00:00Z", true)]
    [InlineData("2024-04-18", "14:14:04.5", "2024-04-18T14:14:04.5Z", false)]
    [InlineData("18/04/98", "14:14:04", "1998-04-18T14:14:04Z", false)]
    [InlineData("18/04/24", null, "2024-04-18T00:00:00Z", true)]
    [InlineData("2016-12-31T23:59:60.5", null, "2017-01-01T00:00:00.5Z", false)] // a leap second
    public void StampsAreUtc(string stamp, string? time, string expected, bool dateOnly)
    {
        DateTimeOffset? read = StartTime.Parse(stamp, time, out bool isDateOnly);
        Assert.Equal(DateTimeOffset.Parse(expected, CultureInfo.InvariantCulture), read);
        Assert.Equal(dateOnly, isDateOnly);
    }

    [Theory]
    [InlineData("yesterday")]
    [InlineData("2024-02-30T00:00:00")]
    [InlineData("2024-13-01")]
    [InlineData("2024-04-18T25:00:00")]
    [InlineData("2024-04-18T12:61:00")]
    [InlineData("0000-00-00T00:00:00")]
    [InlineData("")]
    public void WhatIsNoTimeIsUnknown(string stamp) => Assert.Null(StartTime.Parse(stamp, null, out _));

    [Fact]
    public void AModifiedJulianDateWillDo()
    {
        // MJD 60000.5 = 2023-02-25 12:00 UTC (MJD 40587 = 1970-01-01; 19413 days later is 2023-02-25).
        List<HeaderIssue> issues = [];
        KeywordValues header = new([KeyValuePair.Create("MJD-OBS", "60000.5")]);
        Assert.Equal(new DateTimeOffset(2023, 2, 25, 12, 0, 0, TimeSpan.Zero), StartTime.Read(header, issues));
        Assert.Empty(issues);
    }
}
