using SensorProfile.Frames;

namespace SensorProfile.Tests.Frames;

public class NumberTextTests
{
    [Theory]
    [InlineData("0.5", 0.5, false)]
    [InlineData("0,5", 0.5, true)]
    [InlineData("3,2E-05", 3.2e-5, true)]
    [InlineData("26.", 26, false)]
    [InlineData("1.0D3", 1000, false)]
    [InlineData("\u221210", -10, false)]
    [InlineData("+1e2", 100, false)]
    [InlineData("1,234", 1.234, true)] // never thousands
    public void NumbersAreReadTheSameEverywhere(string text, double value, bool comma)
    {
        Assert.True(NumberText.TryParse(text, out double read, out bool hasComma));
        Assert.Equal((value, comma), (read, hasComma));
    }

    [Theory]
    [InlineData("1.234,5")]
    [InlineData("1,2,3")]
    [InlineData("abc")]
    [InlineData("")]
    [InlineData("300 s")]
    public void WhatIsNoNumberIsRefused(string text) => Assert.False(NumberText.TryParse(text, out _, out _));

    [Theory]
    [InlineData(-10.0, 2, "\u221210")]
    [InlineData(0.25, 2, "0.25")]
    [InlineData(-0.001, 2, "0")]
    [InlineData(300, 6, "300")]
    public void SentencesGetShortNumbers(double value, int decimals, string text) =>
        Assert.Equal(text, NumberText.Short(value, decimals));
}
