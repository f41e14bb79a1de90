using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Fitting.Models;
using SensorProfile.Tests.Fitting;

namespace SensorProfile.Tests.DarkCurrent.Laws;

/// <summary>Varshni's gap and the rate of an area of silicon (Janesick 2001), recomputed with 40 digits.</summary>
public class SiliconTests
{
    [Theory]
    [InlineData(300, 1.1108214488636)]
    [InlineData(293.15, 1.1126380057187)]
    [InlineData(273.15, 1.1177719482408)]
    [InlineData(263.15, 1.1202414678283)]
    [InlineData(253.15, 1.1226441104307)]
    public void Gap(double kelvin, double expected)
    {
        Digits.Printed(expected, Silicon.Gap(kelvin), 5e-14);
        Digits.Relative(
            (Silicon.Gap(kelvin + 1e-3) - Silicon.Gap(kelvin - 1e-3)) / 2e-3,
            Silicon.GapSlope(kelvin),
            1e-8
        );
        Digits.Relative(
            (Silicon.LogDepletionShape(kelvin + 1e-2) - Silicon.LogDepletionShape(kelvin - 1e-2)) / 2e-2,
            Silicon.LogDepletionSlope(kelvin),
            1e-8
        );
    }

    // 2.5e15·A·D_FM·T^1.5·exp(−E_g/2kT), A in cm², for 1 nA/cm² at 300 K on a 9 µm pixel, with the gap at each
    // temperature (form as in Janesick 2001).
    [Theory]
    [InlineData(26.85, 4916.06254943, 5e-9)]
    [InlineData(20, 2772.87963027, 5e-9)]
    [InlineData(0, 445.914749487, 5e-10)]
    [InlineData(-20, 54.5182243701, 5e-11)]
    public void FigureOfMeritForm(double celsius, double expected, double halfUnit) =>
        Digits.Printed(
            expected,
            2.5e15 * 9e-4 * 9e-4 * Math.Exp(Silicon.LogDepletionShape(celsius + PhysicalConstants.ZeroCelsius)),
            halfUnit
        );

    [Fact]
    public void ItsCoefficientIsRoundedDown()
    {
        double exact = 1e-9 / 1.602176634e-19 / Math.Exp(Silicon.LogDepletionShape(300));
        Digits.Relative(2.57097133096e15, exact, 2e-12);
    }
}
