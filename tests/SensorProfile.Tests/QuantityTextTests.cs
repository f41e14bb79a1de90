using System.Globalization;

namespace SensorProfile.Tests;

public class QuantityTextTests
{
    [Theory]
    [InlineData(1.52341, 0.00412, "e-", "1.5234 ± 0.0041 e⁻")]
    // the uncertainty rounds up into the next decade
    [InlineData(1.52341, 0.0996, "e-", "1.52 ± 0.10 e⁻")]
    [InlineData(0.80123, 0.00086, "e-/ADU", "0.80123 ± 0.00086 e⁻/ADU")]
    [InlineData(0.0061, 0.00008, "e-/px/s", "0.006100 ± 0.000080 e⁻/px/s")]
    [InlineData(0.000041, 0.0000032, "e-/px/s", "(4.10 ± 0.32)·10⁻⁵ e⁻/px/s")]
    [InlineData(-0.00002, 0.00013, "e-/px/s", "−0.00002 ± 0.00013 e⁻/px/s")]
    [InlineData(-0.0001, 0.013, "e-", "0.000 ± 0.013 e⁻")] // no negative zero
    [InlineData(51234.4, 1234, "e-", "51200 ± 1200 e⁻")]
    [InlineData(23456789, 45678, "e-", "(2.3457 ± 0.0046)·10⁷ e⁻")]
    [InlineData(6.13, 0.048, "°C", "6.130 ± 0.048 °C")]
    [InlineData(0.41, 0.05, "%", "(0.410 ± 0.050) %")]
    [InlineData(16383, 0, "ADU", "16383 ADU")] // exact: no uncertainty is printed
    [InlineData(13.5, 0.1, "stops", "13.50 ± 0.10 stops")]
    [InlineData(1.02, 0.03, "1", "1.020 ± 0.030")]
    [InlineData(1, 0, "frames", "1 frame")]
    [InlineData(2, 0, "frames", "2 frames")]
    [InlineData(1, 0, "e-", "1 e⁻")]
    [InlineData(double.NaN, 1, "e-", "not measured")]
    [InlineData(0, 0, "e-", "0 e⁻")]
    [InlineData(5, 12, "e-", "5 ± 12 e⁻")]
    [InlineData(1234.5, 12.3, "ADU", "1235 ± 12 ADU")]
    public void AQuantityIsRoundedWhereItsUncertaintyBegins(
        double value,
        double uncertainty,
        string unit,
        string expected
    ) => Assert.Equal(expected, QuantityText.Of(value, uncertainty, unit));

    [Theory]
    [InlineData(0.02, "0.02")]
    [InlineData(123.4567, "123.5")]
    [InlineData(123456, "123500")]
    [InlineData(-10, "−10")]
    [InlineData(0.00002, "2·10⁻⁵")]
    [InlineData(0.000021234, "2.123·10⁻⁵")]
    [InlineData(9_216_000_000, "9.216·10⁹")]
    [InlineData(double.PositiveInfinity, "not measured")]
    public void APlainNumberKeepsFourDigits(double value, string expected) =>
        Assert.Equal(expected, QuantityText.Number(value));

    [Fact]
    public void WhatIsNullWasNotMeasured() => Assert.Equal("not measured", QuantityText.Of(null));

    [Fact]
    public void CountsAndTemperatures()
    {
        Assert.Equal("9999", QuantityText.Count(9999));
        Assert.Equal("9\u202F216\u202F000", QuantityText.Count(9_216_000));
        Assert.Equal("−10.0 °C", QuantityText.Temperature(-10));
        Assert.Equal("0.0 °C", QuantityText.Temperature(-0.04));
        Assert.Equal("−10 °C", QuantityText.Degrees(-10));
        Assert.Equal("0 °C", QuantityText.Degrees(-0.008333));
        Assert.Equal("25.8 °C", QuantityText.Degrees(25.81));
    }

    [Fact]
    public void TheCultureDoesNotMatter()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("−1.52 ± 0.10 e⁻", QuantityText.Of(-1.52, 0.1, "e-"));
            Assert.Equal("1.5", QuantityText.Number(1.5));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
